// What voltage does a rested battery show at a state of charge and a temperature?
// Generated from data/tables/open_circuit_voltage.toml by tests/structure/make_tables.py; do not edit.
#pragma once

#include "bankwright/tables/source.hpp"

#include <array>

// clang-format off
namespace bankwright::tables::open_circuit_voltage {

inline constexpr Source source_charge_sheet{
    "public 'State of Charge' data sheet, as kept in a public repository",
    "datasets/lead_acid_12v/ds.csv",
    "undated",
    "quoted, low: a file of no standing; the 80 degF row of the flooded columns also in two pages that attribute it to the BCI",
};

inline constexpr Source source_agm_usual{
    "the set that question-and-answer pages on AGM batteries usually print",
    "12 V, open circuit, rested",
    "undated",
    "recalled; not verified in any copy",
};

inline constexpr Source source_piecewise{
    "Piecewise Linear Approximation of Battery Open-Circuit Voltage Characteristics, IEEE Trans. Instrum. Meas. 2025",
    "its companion README, breakpoints for linear interpolation, room temperature",
    "2025",
    "read; a slow test (C/20 or C/32) keeps a few mV of overpotential",
};

struct LeadRow {
    int fahrenheit; // [degF]
    double v0; // [V]
    double v25; // [V]
    double v50; // [V]
    double v75; // [V]
    double v100; // [V]
};
// Six cells, vented, by temperature; the columns say the state of charge in percent.
inline constexpr std::array<LeadRow, 13> flooded{{
    {0, 11.756, 11.926, 12.106, 12.316, 12.516},
    {10, 11.782, 11.952, 12.132, 12.342, 12.542},
    {20, 11.806, 11.976, 12.156, 12.366, 12.566},
    {30, 11.828, 11.998, 12.178, 12.388, 12.588},
    {40, 11.846, 12.016, 12.196, 12.406, 12.606},
    {50, 11.862, 12.032, 12.212, 12.422, 12.622},
    {60, 11.874, 12.044, 12.224, 12.434, 12.634},
    {70, 11.883, 12.053, 12.233, 12.443, 12.643},
    {80, 11.89, 12.06, 12.24, 12.45, 12.65},
    {90, 11.895, 12.065, 12.245, 12.455, 12.655},
    {100, 11.898, 12.068, 12.248, 12.458, 12.658},
    {110, 11.901, 12.071, 12.251, 12.461, 12.661},
    {120, 11.903, 12.073, 12.253, 12.463, 12.663},
}};
inline constexpr Source flooded_source = source_charge_sheet;

// Six cells, gelled, by temperature.
inline constexpr std::array<LeadRow, 13> gel{{
    {0, 11.666, 11.866, 12.266, 12.466, 12.666},
    {10, 11.692, 11.892, 12.292, 12.492, 12.692},
    {20, 11.716, 11.916, 12.316, 12.516, 12.716},
    {30, 11.738, 11.938, 12.338, 12.538, 12.738},
    {40, 11.756, 11.956, 12.356, 12.556, 12.756},
    {50, 11.772, 11.972, 12.372, 12.572, 12.772},
    {60, 11.784, 11.984, 12.384, 12.584, 12.784},
    {70, 11.793, 11.993, 12.393, 12.593, 12.793},
    {80, 11.8, 12.0, 12.4, 12.6, 12.8},
    {90, 11.805, 12.005, 12.405, 12.605, 12.805},
    {100, 11.808, 12.008, 12.408, 12.608, 12.808},
    {110, 11.811, 12.011, 12.411, 12.611, 12.811},
    {120, 11.813, 12.013, 12.413, 12.613, 12.813},
}};
inline constexpr Source gel_source = source_charge_sheet;

struct AgmRow {
    int charge; // [%]
    double volts_low; // [V]
    double volts_high; // [V]
};
// Six cells, absorbed glass mat, about 25 degC; a printed range is kept as a range.
inline constexpr std::array<AgmRow, 5> agm{{
    {0, 11.8, 11.8},
    {25, 12.0, 12.0},
    {50, 12.3, 12.35},
    {75, 12.6, 12.65},
    {100, 12.8, 12.85},
}};
inline constexpr Source agm_source = source_agm_usual;

struct LithiumRow {
    double charge; // [1]
    double volts; // [V]
};
// One cell, C/32. Its last row is the end of charge, not a rested cell: see battery_voltage.hpp.
inline constexpr std::array<LithiumRow, 10> lifepo4{{
    {0.0, 2.0102},
    {0.0033, 2.4177},
    {0.0117, 2.7405},
    {0.0267, 2.9299},
    {0.0534, 3.0872},
    {0.0885, 3.1942},
    {0.2972, 3.2772},
    {0.9833, 3.3511},
    {0.995, 3.418},
    {1.0, 3.5981},
}};
inline constexpr Source lifepo4_source = source_piecewise;

// One cell A, C/32; that it is a layered oxide is inferred from its voltage window, the source does not say so.
inline constexpr std::array<LithiumRow, 10> nmc{{
    {0.0, 2.5061},
    {0.0151, 2.8981},
    {0.0452, 3.1461},
    {0.0955, 3.3231},
    {0.1508, 3.4218},
    {0.2915, 3.5737},
    {0.4573, 3.7017},
    {0.8342, 4.0637},
    {0.9497, 4.1009},
    {1.0, 4.1932},
}};
inline constexpr Source nmc_source = source_piecewise;

// One cell B, C/20: the second layered-oxide cell of the same source, kept for comparison.
inline constexpr std::array<LithiumRow, 10> nmc_b{{
    {0.0, 2.5},
    {0.005, 2.808},
    {0.0352, 3.1179},
    {0.0854, 3.3182},
    {0.1357, 3.4193},
    {0.2915, 3.5826},
    {0.4523, 3.6941},
    {0.8392, 4.0664},
    {0.9548, 4.1121},
    {1.0, 4.2},
}};
inline constexpr Source nmc_b_source = source_piecewise;

} // namespace bankwright::tables::open_circuit_voltage
// clang-format on
