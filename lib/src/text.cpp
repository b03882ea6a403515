// The bodies of text/, built once. Written by tests/structure/make_umbrella.py.
#include "bankwright/text/decimal_inl.hpp"
#include "bankwright/text/source_excerpt_inl.hpp"
