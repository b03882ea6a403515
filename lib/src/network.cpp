// The bodies of network/, built once. Written by tests/structure/make_umbrella.py.
#include "bankwright/network/build_inl.hpp"
#include "bankwright/network/readings_inl.hpp"
#include "bankwright/network/reference_inl.hpp"
#include "bankwright/network/to_branches_inl.hpp"
