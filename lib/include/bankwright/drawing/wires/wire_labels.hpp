// Where does the label of each conductor stand? On its own line, clear of every other label and part.
#pragma once

#include "bankwright/drawing/drawing.hpp"
#include "bankwright/linkage.hpp"

#include <optional>
#include <vector>

namespace bankwright::drawing {

struct LabelSize {
    double width = 0.0;
    double height = 0.0;
};

struct LabelPlace {
    Box box;              // as it is on the page
    bool upright = false; // turned a quarter to the left: it reads from below
    Point toward;         // direction of its line there, from the conductor's `from`: (1, 0), (0, -1), ...
};

// By wire. None where there is no room at all; such a conductor is told of below the drawing.
std::vector<std::optional<LabelPlace>> place_labels(Drawing const& drawing, std::vector<LabelSize> const& sizes);

} // namespace bankwright::drawing

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/drawing/wires/wire_labels_inl.hpp"
#endif
