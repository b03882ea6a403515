// The bodies of bank/, built once. Written by tests/structure/make_umbrella.py.
#include "bankwright/bank/source_map_inl.hpp"
