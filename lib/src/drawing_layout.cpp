// The bodies of drawing/layout/, built once. Written by tests/structure/make_umbrella.py.
#include "bankwright/drawing/layout/battery_places_inl.hpp"
#include "bankwright/drawing/layout/battery_rows_inl.hpp"
#include "bankwright/drawing/layout/column_places_inl.hpp"
#include "bankwright/drawing/layout/equipment_grid_inl.hpp"
#include "bankwright/drawing/layout/equipment_places_inl.hpp"
#include "bankwright/drawing/layout/lay_out_inl.hpp"
#include "bankwright/drawing/layout/wiring_scheme_inl.hpp"
