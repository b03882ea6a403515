// Labels on sheets: flags that fold round the ends of conductors, and one for the box.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/reports/labels.hpp"
#include "bankwright/units/quantities.hpp"

#include <string>

namespace bankwright::page {

struct Sheet {
    Length width = 0.210 * si::meter; // A4
    Length height = 0.297 * si::meter;
    Length margin = 0.008 * si::meter;     // less where a label leaves less
    Length flag_width = 0.090 * si::meter; // of one label, its two faces and what wraps the conductor
    Length flag_height = 0.014 * si::meter;
};

// Why nothing can be printed on it; empty if it can: at least one label has to fit.
std::string sheet_problem(Sheet const& sheet);

// Both in millimeters, true to scale when printed at 100 %. Sheets stand below each other in the drawing, and are pages
// of the document. Throw std::invalid_argument for a sheet with a problem.
std::string labels_svg(Labels const& labels, Sheet const& sheet = {});
std::string labels_html(Labels const& labels, Sheet const& sheet = {});

} // namespace bankwright::page

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/page/label_sheets_inl.hpp"
#endif
