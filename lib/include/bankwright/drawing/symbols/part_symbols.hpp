// How does each part look? Batteries as they lie in their box, seen from above; everything else by the symbols of
// IEC 60617 (from memory): fuse, circuit-breaker, switch, motor, resistor, converter, plug and socket.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/drawing/drawing.hpp"
#include "bankwright/drawing/pen.hpp"
#include "bankwright/drawing/symbols/marks.hpp"
#include "bankwright/drawing/words.hpp"
#include "bankwright/linkage.hpp"

namespace bankwright::drawing {

struct PartContext {
    Bank const& bank;
    Readings const& readings;
    Marks const& marks;
    Drawing const& drawing;
};

// In two layers: conductors run over the first and under the second.
void draw_part_ground(Pen& pen, PartPlace const& place);
void draw_part(Pen& pen, PartPlace const& place, PartContext const& context);

} // namespace bankwright::drawing

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/drawing/symbols/part_symbols_inl.hpp"
#endif
