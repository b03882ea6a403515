// The bodies of solver/currents/, built once. Written by tests/structure/make_umbrella.py.
#include "bankwright/solver/currents/branch_currents_inl.hpp"
#include "bankwright/solver/currents/forest_currents_inl.hpp"
