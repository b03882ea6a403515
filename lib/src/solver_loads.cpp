// The bodies of solver/loads/, built once. Written by tests/structure/make_umbrella.py.
#include "bankwright/solver/loads/constant_power_inl.hpp"
#include "bankwright/solver/loads/port_loads_inl.hpp"
#include "bankwright/solver/loads/ports_inl.hpp"
#include "bankwright/solver/loads/rising_loads_inl.hpp"
