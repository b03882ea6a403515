// How does each conductor look, and what does its label say? Positive ones are red, negative ones black with a broken
// white core; each label bears the sign as well.
#pragma once

#include "bankwright/drawing/symbols/part_symbols.hpp"
#include "bankwright/drawing/wires/wire_labels.hpp"
#include "bankwright/linkage.hpp"

#include <string>
#include <vector>

namespace bankwright::drawing {

struct LabelText {
    std::string id;
    std::string size;
    std::string amperes;  // without a sign: an arrow shows which way
    double current = 0.0; // [A] from `from` to `to`
    Mark const* mark = nullptr;
    LabelSize measure;
};

LabelText label_text(WirePlace const& wire, PartContext const& context);

// "cable `main`: CB.load to bow+, 6 AWG 17 ft, red, 52.1 A"
std::string wire_in_words(WirePlace const& wire, PartContext const& context);

std::string_view color_of(WireSide side);

void draw_fault_band(Pen& pen, WirePlace const& wire);
void draw_wire(Pen& pen, WirePlace const& wire);
void draw_label(Pen& pen, WirePlace const& wire, LabelText const& text, LabelPlace const& place);
void draw_side_sign(Pen& pen, Point middle, WireSide side);

} // namespace bankwright::drawing

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/drawing/wires/wire_lines_inl.hpp"
#endif
