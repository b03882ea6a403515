#pragma once

#include "bankwright/reports/measure.hpp"
#include "bankwright/units/print.hpp"

#include <fmt/format.h>

namespace bankwright {

BANKWRIGHT_INLINE std::string measure(double value, std::string_view unit) {
    if (unit == "V") return print(value * si::volt);
    if (unit == "A") return print(value * si::ampere);
    if (unit == "ohm") return print(value * si::ohm);
    if (unit == "W") return print(value * si::watt);
    if (unit == "s") return print(value * si::second);
    if (unit == "m") return print(value * si::meter);
    auto const number = fmt::format("{:.4g}", value);
    return unit.empty() ? number : fmt::format("{} {}", number, unit);
}

} // namespace bankwright
