// The bodies of page/html/, built once. Written by tests/structure/make_umbrella.py.
#include "bankwright/page/html/chart_inl.hpp"
#include "bankwright/page/html/sentences_inl.hpp"
