// What stands below the drawing: what its signs mean, the findings, what there was no room for, and a caution.
#pragma once

#include "bankwright/drawing/symbols/part_symbols.hpp"
#include "bankwright/linkage.hpp"

#include <string>
#include <vector>

namespace bankwright::drawing {

struct Notes {
    double top = 0.0;
    double width = 0.0;                 // of the page
    bool alone = true;                  // with findings and the caution: DrawOptions
    std::vector<std::string> unlabeled; // conductors that had no room for a label, in words
};

// Returns where they end below.
double draw_notes(Pen& pen, Notes const& notes, PartContext const& context);

} // namespace bankwright::drawing

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/drawing/symbols/notes_inl.hpp"
#endif
