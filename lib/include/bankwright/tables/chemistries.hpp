// What does each chemistry bear, lose and give back?
// Generated from data/tables/chemistries.toml by tests/structure/make_tables.py; do not edit.
#pragma once

#include "bankwright/tables/source.hpp"

#include <array>
#include <string_view>

// clang-format off
namespace bankwright::tables::chemistries {

inline constexpr Source source_usual_limits{
    "common practice, no single source",
    "limits of the chemistry per cell at 25 degC; a maker's own figures win over these",
    "none",
    "row by row",
};

inline constexpr Source source_ieee_485{
    "IEEE 485",
    "Table 1, vented lead-acid, cell-size correction factors, base 77 degF (25 degC)",
    "year not stated",
    "recalled, none seen in full; range of 25 to 125 degF read",
};

inline constexpr Source source_ampere_hour_law{
    "Woodbridge's ampere-hour law of charging, 1935, as a trade page tells it",
    "a lead-acid battery takes, without gassing, no more amperes than ampere-hours are missing; 90 % back in 2 to 3 hours",
    "1935",
    "row by row",
};

struct ChargeVoltagesRow {
    std::string_view chemistry;
    double float_low; // [V]
    double float_high; // [V]
    double absorption_low; // [V]
    double absorption_high; // [V]
    std::string_view mark;
};
// Volts per cell in the order of the chemistries. Lithium is not floated: there the figures are the usual
// holding voltage.
inline constexpr std::array<ChargeVoltagesRow, 5> charge_voltages{{
    {"flooded", 2.17, 2.25, 2.4, 2.45, "float recalled (IEEE 450/484 range), absorption common practice"},
    {"agm", 2.25, 2.3, 2.4, 2.45, "float recalled, 2.25 read; absorption common practice"},
    {"gel", 2.25, 2.3, 2.35, 2.4, "float recalled, 2.25 read; absorption common practice"},
    {"lifepo4", 3.35, 3.45, 3.55, 3.65, "common practice; 3.60 to 3.65 is the charge cut-off"},
    {"nmc", 4.0, 4.1, 4.1, 4.2, "common practice"},
}};
inline constexpr Source charge_voltages_source = source_usual_limits;

struct CutoffsRow {
    std::string_view chemistry;
    double low; // [V]
    double high; // [V]
    std::string_view mark;
};
// Volts per cell at which a discharge and a charge must stop; for lithium the protective disconnect sees to it.
inline constexpr std::array<CutoffsRow, 5> cutoffs{{
    {"flooded", 1.75, 2.67, "low quoted: two service texts (20-hour and reserve ratings); high common practice, end of an equalizing charge"},
    {"agm", 1.75, 2.45, "low quoted: two service texts; high common practice"},
    {"gel", 1.75, 2.4, "low quoted: two service texts; high common practice"},
    {"lifepo4", 2.5, 3.65, "common practice"},
    {"nmc", 3.0, 4.2, "common practice: 2.5 to 3.0 and 4.20"},
}};
inline constexpr Source cutoffs_source = source_usual_limits;

struct TemperaturesRow {
    std::string_view chemistry;
    int charge_low; // [degC]
    int charge_high; // [degC]
    int discharge_low; // [degC]
    int discharge_high; // [degC]
    std::string_view mark;
};
// Degrees Celsius between which a battery may be charged and discharged.
inline constexpr std::array<TemperaturesRow, 5> temperatures{{
    {"flooded", -20, 50, -20, 50, "common practice; a discharged one freezes earlier"},
    {"agm", -20, 50, -20, 50, "common practice"},
    {"gel", -20, 50, -20, 50, "common practice"},
    {"lifepo4", 0, 45, -20, 60, "read; below 0 degC charging plates lithium"},
    {"nmc", 0, 45, -20, 60, "read; below 0 degC charging plates lithium"},
}};
inline constexpr Source temperatures_source = source_usual_limits;

struct RatesRow {
    std::string_view chemistry;
    double charge; // [1/h]
    double discharge; // [1/h]
    std::string_view mark;
};
// Usual largest charging and discharging current over the capacity, per hour. 0: limited by nothing but
// resistance.
inline constexpr std::array<RatesRow, 5> rates{{
    {"flooded", 0.25, 0.0, "common practice"},
    {"agm", 0.4, 0.0, "common practice"},
    {"gel", 0.25, 0.0, "common practice"},
    {"lifepo4", 0.5, 1.0, "common practice"},
    {"nmc", 0.5, 1.0, "common practice"},
}};
inline constexpr Source rates_source = source_usual_limits;

struct LossesRow {
    std::string_view chemistry;
    double monthly; // [1 a month]
    double coulombic; // [1]
    std::string_view mark;
};
// Self-discharge at 25 degC and charge given back over charge put in.
inline constexpr std::array<LossesRow, 5> losses{{
    {"flooded", 0.05, 0.85, "self-discharge common practice (antimonial plates once lost 0.67 percent a day, read); efficiency read"},
    {"agm", 0.03, 0.95, "self-discharge read; efficiency common practice (up to 0.98 read for thin plates)"},
    {"gel", 0.03, 0.95, "self-discharge read; efficiency common practice"},
    {"lifepo4", 0.02, 0.99, "self-discharge common practice; efficiency recalled"},
    {"nmc", 0.02, 0.99, "self-discharge common practice; efficiency recalled"},
}};
inline constexpr Source losses_source = source_usual_limits;

struct AcceptanceRow {
    std::string_view chemistry;
    double volts; // [V]
    double hours; // [h]
    double side; // [1/h]
    double tail; // [1/h]
    std::string_view mark;
};
// At this voltage of a cell, 25 degC: missing charge over the current taken, what a full one takes over its
// capacity, and the current at which it counts as full.
inline constexpr std::array<AcceptanceRow, 5> acceptance{{
    {"flooded", 2.4, 1.1, 0.005, 0.01, "hours fitted to a log, read: 130 Ah, C/7 from 50 %, 6 h 58 min (an owners' forum); side and tail common practice"},
    {"agm", 2.4, 1.0, 0.001, 0.005, "hours and tail read: 96 Ah, C/5 from 50 %, 5.5 h to 0.5 %, absorption at 77 % (a published log of an AGM battery's charge); side common practice"},
    {"gel", 2.35, 1.0, 0.001, 0.005, "as agm, no log was found"},
    {"lifepo4", 3.6, 0.1, 0.001, 0.05, "hours recalled (95 percent in at C/2 when the voltage is reached); tail common practice"},
    {"nmc", 4.15, 0.2, 0.001, 0.05, "hours recalled (90 percent in at C/2 when the voltage is reached); tail common practice"},
}};
inline constexpr Source acceptance_source = source_ampere_hour_law;

struct PeukertRow {
    std::string_view chemistry;
    double usual; // [1]
    double low; // [1]
    double high; // [1]
    std::string_view mark;
};
// Exponent where no second rating tells it, and the usual range.
inline constexpr std::array<PeukertRow, 5> peukert{{
    {"flooded", 1.25, 1.2, 1.6, "default read in general pages, range common practice"},
    {"agm", 1.1, 1.05, 1.15, "common practice"},
    {"gel", 1.15, 1.1, 1.25, "common practice"},
    {"lifepo4", 1.03, 1.01, 1.05, "common practice"},
    {"nmc", 1.03, 1.01, 1.05, "common practice"},
}};
inline constexpr Source peukert_source = source_usual_limits;

struct LeadCapacityRow {
    int fahrenheit; // [degF]
    double factor; // [1]
};
// A cell must be larger by this factor to give its rated capacity at the temperature: capacity = rated /
// factor.
inline constexpr std::array<LeadCapacityRow, 37> lead_capacity{{
    {25, 1.52},
    {30, 1.43},
    {35, 1.35},
    {40, 1.3},
    {45, 1.25},
    {50, 1.19},
    {55, 1.15},
    {60, 1.11},
    {65, 1.08},
    {66, 1.072},
    {67, 1.064},
    {68, 1.056},
    {69, 1.048},
    {70, 1.04},
    {71, 1.034},
    {72, 1.029},
    {73, 1.023},
    {74, 1.017},
    {75, 1.011},
    {76, 1.006},
    {77, 1.0},
    {78, 0.994},
    {79, 0.987},
    {80, 0.98},
    {81, 0.976},
    {82, 0.972},
    {83, 0.968},
    {84, 0.964},
    {85, 0.96},
    {90, 0.93},
    {95, 0.91},
    {100, 0.89},
    {105, 0.88},
    {110, 0.87},
    {115, 0.86},
    {120, 0.85},
    {125, 0.85},
}};
inline constexpr Source lead_capacity_source = source_ieee_485;

struct LithiumCapacityRow {
    int celsius; // [degC]
    double share; // [1]
    std::string_view mark;
};
// Share of its rated capacity that a lithium battery gives at the temperature.
inline constexpr std::array<LithiumCapacityRow, 5> lithium_capacity{{
    {-20, 0.6, "common practice"},
    {-10, 0.75, "common practice"},
    {0, 0.88, "common practice"},
    {10, 0.95, "common practice"},
    {25, 1.0, "common practice"},
}};
inline constexpr Source lithium_capacity_source = source_usual_limits;

} // namespace bankwright::tables::chemistries
// clang-format on
