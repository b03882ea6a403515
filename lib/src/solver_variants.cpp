// The bodies of solver/variants/, built once. Written by tests/structure/make_umbrella.py.
#include "bankwright/solver/variants/base_inverse_inl.hpp"
#include "bankwright/solver/variants/variant_lanes_inl.hpp"
#include "bankwright/solver/variants/variant_ports_inl.hpp"
