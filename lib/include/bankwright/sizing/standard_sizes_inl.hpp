#pragma once

#include "bankwright/sizing/standard_sizes.hpp"
#include "bankwright/tables/ampacity.hpp"
#include "bankwright/tables/protection.hpp"
#include "bankwright/tables/wire_resistance.hpp"

#include <algorithm>

namespace bankwright {

BANKWRIGHT_INLINE std::vector<WireSize> standard_wire_sizes(SizeSystem system) {
    constexpr double square_millimeter = 1e-6; // [m2]
    constexpr double least_stranded = 0.75;    // [mm2] 0.5 mm2 is below every ampacity table
    std::vector<WireSize> sizes;
    if (system == SizeSystem::awg)
        for (auto const& row : tables::ampacity::by_gauge) {
            if (row.gauge <= 0 || row.gauge % 2 == 0) sizes.emplace_back(Awg{row.gauge});
        }
    else
        for (auto const& row : tables::wire_resistance::class_5)
            if (row.square_millimeters >= least_stranded)
                sizes.emplace_back(row.square_millimeters * square_millimeter * si::meter * si::meter);
    std::sort(sizes.begin(), sizes.end(), [](WireSize a, WireSize b) { return a.area() < b.area(); });
    return sizes;
}

BANKWRIGHT_INLINE std::vector<WireSize> stocked_sizes(System const& system, SizeSystem kind) {
    std::vector<WireSize> sizes;
    for (auto const& size : system.stock.value_or(std::vector<WireSize>{}))
        if (size.gauge().has_value() == (kind == SizeSystem::awg)) sizes.push_back(size);
    if (sizes.empty()) return standard_wire_sizes(kind);
    std::sort(sizes.begin(), sizes.end(), [](WireSize a, WireSize b) { return a.area() < b.area(); });
    return sizes;
}

BANKWRIGHT_INLINE std::optional<WireSize> at_least_as_good(WireSize size) {
    for (auto const& other : standard_wire_sizes(size.gauge() ? SizeSystem::metric : SizeSystem::awg))
        if (other.area() >= size.area() * (1.0 - 1e-9)) return other;
    return std::nullopt;
}

BANKWRIGHT_INLINE std::vector<Current> standard_ratings() {
    std::vector<Current> ratings;
    for (auto const& row : tables::protection::standard_sizes)
        ratings.push_back(row.amperes * si::ampere);
    return ratings;
}

} // namespace bankwright
