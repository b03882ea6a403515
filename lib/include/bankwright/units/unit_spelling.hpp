// Which unit is spelled so, and which could a misspelled one be?
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/units/parsing/unit_tables.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace bankwright {

struct FoundUnit {
    Unit const* unit;
    int prefix; // power of ten
};

// The unit and prefix that `name` spells exactly.
std::optional<FoundUnit> find_unit(UnitTable const& table, std::string_view name);

// Every way to write a unit of this quantity, prefixes included.
std::vector<std::string> unit_spellings(UnitTable const& table);

// The unit that was probably meant; none where nothing is near.
std::optional<std::string> suggest_unit(UnitTable const& table, std::string_view written);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/units/unit_spelling_inl.hpp"
#endif
