// The bodies of drawing/, built once. Written by tests/structure/make_umbrella.py.
#include "bankwright/drawing/pen_inl.hpp"
#include "bankwright/drawing/svg_inl.hpp"
#include "bankwright/drawing/words_inl.hpp"
