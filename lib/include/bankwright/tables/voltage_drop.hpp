// How much voltage may the conductors of a circuit lose, and by which formulas do the standards reckon it?
// Generated from data/tables/voltage_drop.toml by tests/structure/make_tables.py; do not edit.
#pragma once

#include "bankwright/tables/source.hpp"

#include <array>
#include <string_view>

// clang-format off
namespace bankwright::tables::voltage_drop {

inline constexpr Source source_abyc_drop{
    "ABYC E-11",
    "11.14.2.6, allowed drop; CM = K I L / E with K = 10.75, L out and back in feet, E in volts",
    "before July 2025",
    "quoted: an owners' forum; the limits in a chandler's reprint too",
};

inline constexpr Source source_iso_drop{
    "ISO 10133 (superseded by ISO 13297)",
    "annex A: E = 0.0164 I L / S, L out and back in meters, S in mm2",
    "2012, as reprinted",
    "quoted: trade page; the constant is 5 percent below annealed copper at 20 degC, so the formula understates the drop",
};

struct AllowedRow {
    std::string_view circuit;
    double share; // [1]
};
// Share of the system voltage that may be lost between source and device.
inline constexpr std::array<AllowedRow, 2> allowed{{
    {"critical: main feeders, bilge blowers, electronics, navigation lights", 0.03},
    {"other: general lighting and the like", 0.1},
}};
inline constexpr Source allowed_source = source_abyc_drop;

struct AbycFormulaRow {
    double k; // [ohm cmil/ft]
};
// K of CM = K I L / E; copper at about 30 degC.
inline constexpr std::array<AbycFormulaRow, 1> abyc_formula{{
    {10.75},
}};
inline constexpr Source abyc_formula_source = source_abyc_drop;

struct IsoFormulaRow {
    double k; // [ohm mm2/m]
};
// The constant of E = k I L / S.
inline constexpr std::array<IsoFormulaRow, 1> iso_formula{{
    {0.0164},
}};
inline constexpr Source iso_formula_source = source_iso_drop;

} // namespace bankwright::tables::voltage_drop
// clang-format on
