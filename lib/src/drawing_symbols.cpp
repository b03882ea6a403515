// The bodies of drawing/symbols/, built once. Written by tests/structure/make_umbrella.py.
#include "bankwright/drawing/symbols/marks_inl.hpp"
#include "bankwright/drawing/symbols/notes_inl.hpp"
#include "bankwright/drawing/symbols/part_symbols_inl.hpp"
#include "bankwright/drawing/symbols/symbols_inl.hpp"
