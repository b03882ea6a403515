// How large is a box? Length, width and height, as a label has them.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/units/parsed.hpp"
#include "bankwright/units/quantities.hpp"

#include <string>
#include <string_view>

namespace bankwright {

struct Dimensions {
    Length length{};
    Length width{};
    Length height{};

    friend bool operator==(Dimensions const&, Dimensions const&) = default;
};

// "330 x 173 x 240 mm", "13 in x 6.8 in x 9.4 in": a side without a unit has that of the last. Each is above 0 and at
// most 10 m.
Parsed<Dimensions> parse_dimensions(std::string_view text);

// "330 x 173 x 240 mm"; parse_dimensions() reads it back to the last bit.
std::string print_exact(Dimensions const& size);

// In whole millimeters, for people.
std::string print(Dimensions const& size);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/units/dimensions_inl.hpp"
#endif
