// The bodies of sizing/, built once. Written by tests/structure/make_umbrella.py.
#include "bankwright/sizing/cut_list_inl.hpp"
#include "bankwright/sizing/sizing_inl.hpp"
#include "bankwright/sizing/standard_sizes_inl.hpp"
#include "bankwright/sizing/strings_inl.hpp"
