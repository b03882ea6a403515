// How does a battery's internal resistance follow from its chemistry, size, temperature and charge?
// Generated from data/tables/internal_resistance.toml by tests/structure/make_tables.py; do not edit.
#pragma once

#include "bankwright/tables/source.hpp"

#include <array>
#include <string_view>

// clang-format off
namespace bankwright::tables::internal_resistance {

inline constexpr Source source_usual{
    "common practice, no single source",
    "new batteries: makers' short-circuit currents where they are stated row by row, else 100 Ah prismatic iron-phosphate cells 0.2 to 0.7 mohm",
    "none",
    "common practice",
};

inline constexpr Source source_army_cranking{
    "US Army TM 5-1185",
    "cranking power of a fully charged battery: 80 degF 100 %, 30 degF 65 %, 0 degF 40 %",
    "stored copy, undated",
    "read; that resistance goes as the inverse of cranking power is derived",
};

inline constexpr Source source_battery_model{
    "Accurate Electrical Battery Model, IEEE Trans. Energy Convers. 2006",
    "R = 0.1562 exp(-24.37 charge) + 0.07446 ohm, 850 mAh cell",
    "2006",
    "recalled",
};

struct PerCellRow {
    std::string_view chemistry;
    double ohms; // [ohm at 100 Ah]
    double spread; // [1]
    std::string_view mark;
};
// Typical cell of 100 Ah, new, full, 25 degC, in the order of the chemistries, and how far a cell may lie to
// either side. Resistance goes as 1 / capacity, for flooded as in flooded_size.
inline constexpr std::array<PerCellRow, 5> per_cell{{
    {"flooded", 0.00095, 0.5, "common practice: 5.7 mohm for six cells, the upper end of 2 to 6; thin plates for cranking lie lower, and state their cranking current"},
    {"agm", 0.00084, 0.4, "quoted: 90 Ah, 12 V gives 2.3 kA by its maker"},
    {"gel", 0.00095, 0.5, "common practice, between agm and the end of 2 to 6 mohm"},
    {"lifepo4", 0.0005, 0.5, "common practice: middle of 0.2 to 0.7 mohm"},
    {"nmc", 0.001, 0.5, "read, low confidence: 2 Ah cells 50 to 100 mohm, that is 1 to 2 mohm at 100 Ah"},
}};
inline constexpr Source per_cell_source = source_usual;

struct FloodedSizeRow {
    int ampere_hours; // [Ah]
    double ratio; // [1]
    std::string_view mark;
};
// Resistance of a flooded cell over that of one of 100 Ah: straight between these on logarithmic scales, beyond
// them as 1 / capacity.
inline constexpr std::array<FloodedSizeRow, 3> flooded_size{{
    {100, 1.0, "by definition"},
    {845, 0.2303, "quoted: 9.6 kA of 2.1 V by its maker"},
    {2490, 0.076, "quoted: 29.1 kA of 2.1 V by its maker"},
}};
inline constexpr Source flooded_size_source = source_usual;

struct LeadPowerRow {
    int fahrenheit; // [degF]
    double power; // [1]
};
// Cranking power of a lead-acid battery against temperature.
inline constexpr std::array<LeadPowerRow, 3> lead_power{{
    {0, 0.4},
    {30, 0.65},
    {80, 1.0},
}};
inline constexpr Source lead_power_source = source_army_cranking;

struct LeadChargeRow {
    double charge; // [1]
    double ratio; // [1]
};
// Resistance of a lead-acid battery over its resistance when full. That it rises is read, by how much is not.
inline constexpr std::array<LeadChargeRow, 5> lead_charge{{
    {0.0, 2.5},
    {0.25, 1.6},
    {0.5, 1.25},
    {0.75, 1.1},
    {1.0, 1.0},
}};
inline constexpr Source lead_charge_source = source_usual;

struct LithiumColdRow {
    int celsius; // [degC]
    double ratio; // [1]
};
// Resistance of a lithium cell over its resistance at 25 degC.
inline constexpr std::array<LithiumColdRow, 4> lithium_cold{{
    {-20, 4.0},
    {0, 2.0},
    {25, 1.0},
    {45, 0.8},
}};
inline constexpr Source lithium_cold_source = source_usual;

struct LithiumChargeRow {
    double ohms_empty; // [ohm]
    double exponent; // [1]
    double ohms_full; // [ohm]
};
// The three numbers of the formula.
inline constexpr std::array<LithiumChargeRow, 1> lithium_charge{{
    {0.1562, 24.37, 0.07446},
}};
inline constexpr Source lithium_charge_source = source_battery_model;

} // namespace bankwright::tables::internal_resistance
// clang-format on
