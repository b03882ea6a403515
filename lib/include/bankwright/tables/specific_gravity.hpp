// What does a hydrometer in a flooded cell say?
// Generated from data/tables/specific_gravity.toml by tests/structure/make_tables.py; do not edit.
#pragma once

#include "bankwright/tables/source.hpp"

#include <array>

// clang-format off
namespace bankwright::tables::specific_gravity {

inline constexpr Source source_charge_sheet{
    "public 'State of Charge' data sheet, as kept in a public repository",
    "datasets/lead_acid_12v/ds.csv",
    "undated",
    "quoted, low: a file of no standing; the 80 degF row also in two pages that attribute it to the BCI",
};

inline constexpr Source source_doe_primer{
    "DOE-HDBK-1084-95, Primer on Lead-Acid Storage Batteries",
    "cell voltage = specific gravity + 0.845",
    "1995, as reprinted",
    "quoted: trade glossary",
};

inline constexpr Source source_army_correction{
    "US Army TM 5-3820-256-24-4",
    "examples of corrections, 0.004 per 10 degF from 80 degF; so do Table IV of TM 5-1185 and the thermal expansion of the acid. US Navy 14113 and 14344 have 0.001 per 3 degF",
    "undated copies",
    "read",
};

inline constexpr Source source_army_freezing{
    "US Army TM 5-1185 Table III and OD 1002",
    "freezing point by specific gravity",
    "undated copies",
    "read",
};

struct FloodedRow {
    int fahrenheit; // [degF]
    double sg0; // [1]
    double sg25; // [1]
    double sg50; // [1]
    double sg75; // [1]
    double sg100; // [1]
};
// Specific gravity by temperature and state of charge in percent.
inline constexpr std::array<FloodedRow, 13> flooded{{
    {0, 1.152, 1.187, 1.222, 1.257, 1.297},
    {10, 1.148, 1.183, 1.218, 1.253, 1.293},
    {20, 1.144, 1.179, 1.214, 1.249, 1.289},
    {30, 1.14, 1.175, 1.21, 1.245, 1.285},
    {40, 1.136, 1.171, 1.206, 1.241, 1.281},
    {50, 1.132, 1.167, 1.202, 1.237, 1.277},
    {60, 1.128, 1.163, 1.198, 1.233, 1.273},
    {70, 1.124, 1.159, 1.194, 1.229, 1.269},
    {80, 1.12, 1.155, 1.19, 1.225, 1.265},
    {90, 1.116, 1.151, 1.186, 1.221, 1.261},
    {100, 1.112, 1.147, 1.182, 1.217, 1.257},
    {110, 1.108, 1.143, 1.178, 1.213, 1.253},
    {120, 1.104, 1.139, 1.174, 1.209, 1.249},
}};
inline constexpr Source flooded_source = source_charge_sheet;

struct CellRuleRow {
    double volts; // [V]
};
// What to add to the specific gravity to have a cell's open-circuit voltage.
inline constexpr std::array<CellRuleRow, 1> cell_rule{{
    {0.845},
}};
inline constexpr Source cell_rule_source = source_doe_primer;

struct TemperatureRuleRow {
    int base_fahrenheit; // [degF]
    int step_fahrenheit; // [degF]
    double gravity; // [1]
};
// What to add to a reading for each degree above the base.
inline constexpr std::array<TemperatureRuleRow, 1> temperature_rule{{
    {80, 10, 0.004},
}};
inline constexpr Source temperature_rule_source = source_army_correction;

struct FreezingRow {
    double gravity; // [1]
    int fahrenheit; // [degF]
};
// Where the acid freezes. A table attributed to the BCI is far too hopeful at low charge, and is not used.
inline constexpr std::array<FreezingRow, 6> freezing{{
    {1.0, 32},
    {1.1, 19},
    {1.15, 5},
    {1.2, -16},
    {1.25, -62},
    {1.28, -90},
}};
inline constexpr Source freezing_source = source_army_freezing;

} // namespace bankwright::tables::specific_gravity
// clang-format on
