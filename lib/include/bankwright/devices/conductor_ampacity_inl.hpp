// Bodies of conductor_ampacity.hpp.
#pragma once

#include "bankwright/devices/conductor_ampacity.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/tables/ampacity.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

namespace bankwright {

namespace internal::published_ampacity {

inline constexpr double alike = 0.5; // [K] ratings in degF meet the columns in degC

// The columns of Table 5 stand in the order of the rows of note 1.
inline std::optional<std::size_t> column_of(Temperature insulation) {
    std::optional<std::size_t> found;
    for (std::size_t i = 0; i < tables::ampacity::engine_space.size(); ++i)
        if (tables::ampacity::engine_space[i].celsius <= in_celsius(insulation) + alike) found = i;
    return found;
}

inline double cell(tables::ampacity::ByGaugeRow const& row, std::size_t column) {
    std::array<int, 7> const cells{row.c60, row.c75, row.c80, row.c90, row.c105, row.c125, row.c200};
    return cells[column];
}

// The row of its number, of a gauge or SAE size (ABYC E-11 gives both one ampacity); else the thickest row that is not
// thicker than the conductor; rows run from thin to thick. A part in a thousand is print.
inline tables::ampacity::ByGaugeRow const* row_of(WireSize size) {
    tables::ampacity::ByGaugeRow const* found = nullptr;
    if (size.is_sae())
        for (auto const& row : tables::ampacity::by_gauge)
            if (row.gauge == size.gauge()->number) return &row;
    for (auto const& row : tables::ampacity::by_gauge)
        if (area(Awg{row.gauge}).value() <= size.area().value() * 1.001) found = &row;
    return found;
}

inline double warm_share(double insulation_celsius, double ambient_celsius) {
    if (ambient_celsius <= basis_celsius) return 1.0;
    return std::sqrt(std::max(0.0, (insulation_celsius - ambient_celsius) / (insulation_celsius - basis_celsius)));
}

} // namespace internal::published_ampacity

BANKWRIGHT_INLINE std::optional<Current> table_5(Awg gauge, Temperature insulation) {
    auto const column = internal::published_ampacity::column_of(insulation);
    if (!column) return std::nullopt;
    for (auto const& row : tables::ampacity::by_gauge)
        if (row.gauge == gauge.number) return internal::published_ampacity::cell(row, *column) * si::ampere;
    return std::nullopt;
}

BANKWRIGHT_INLINE double bundling_share(int conductors) {
    double share = 1.0;
    for (auto const& row : tables::ampacity::bundled)
        if (conductors >= row.conductors) share = row.factor;
    return share;
}

BANKWRIGHT_INLINE double engine_space_share(Temperature insulation) {
    auto const column = internal::published_ampacity::column_of(insulation);
    return column ? tables::ampacity::engine_space[*column].factor : 0.0;
}

BANKWRIGHT_INLINE std::optional<Ampacity> ampacity(Conductor const& conductor, Temperature ambient) {
    namespace published = internal::published_ampacity;
    if (!conductor.size) return std::nullopt;
    auto const* row = published::row_of(*conductor.size);
    auto const column = published::column_of(conductor.insulation.value_or(celsius(60.0)));
    if (!row || !column) return std::nullopt;

    auto const rating = tables::ampacity::engine_space[*column].celsius;
    Ampacity result;
    result.published = published::cell(*row, *column) * si::ampere;
    result.gauge = Awg{row->gauge};
    result.insulation = celsius(rating);
    result.insulation_assumed = !conductor.insulation;
    result.surroundings = published::warm_share(rating, in_celsius(ambient));
    if (conductor.engine_space.value_or(false)) {
        auto const share = tables::ampacity::engine_space[*column].factor;
        auto const hotter = in_celsius(ambient) > published::engine_space_celsius;
        result.surroundings = hotter ? std::min(share, result.surroundings) : share;
    }
    result.bundling = bundling_share(conductor.bundle.value_or(1));
    result.current = result.published * result.surroundings * result.bundling;
    result.source = tables::ampacity::by_gauge_source;
    return result;
}

} // namespace bankwright
