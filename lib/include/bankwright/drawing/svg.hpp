// A bank as an SVG 1.1 document: its wiring diagram with readings and findings on it.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/drawing/draw_options.hpp"
#include "bankwright/linkage.hpp"

#include <cstddef>
#include <string>

namespace bankwright::drawing {

// More parts than this are no drawing that anybody could read.
inline constexpr std::size_t most_parts = 600;

// For a file or for a page: one <svg> element, text as text, nothing fetched, no script, no style sheet. Throws
// std::length_error for a bank of more than most_parts parts and conductors.
std::string to_svg(Bank const& bank, DrawOptions const& options = {});

} // namespace bankwright::drawing

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/drawing/svg_inl.hpp"
#endif
