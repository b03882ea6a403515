// The bodies of drawing/wires/, built once. Written by tests/structure/make_umbrella.py.
#include "bankwright/drawing/wires/channel_routes_inl.hpp"
#include "bankwright/drawing/wires/wire_labels_inl.hpp"
#include "bankwright/drawing/wires/wire_lines_inl.hpp"
