// What does the copper of a short circuit bear before its insulation is spoiled?
// Generated from data/tables/short_circuit.toml by tests/structure/make_tables.py; do not edit.
#pragma once

#include "bankwright/tables/source.hpp"

#include <array>
#include <string_view>

// clang-format off
namespace bankwright::tables::short_circuit {

inline constexpr Source source_iec_60364{
    "IEC 60364-5-54 / BS 7671",
    "k = 226 sqrt(ln(1 + (final - initial)/(234.5 + initial))) for copper, at most 5 s; printed k by insulation",
    "as reprinted, year not stated",
    "quoted: reprints, the formula in two",
};

struct PrintedKRow {
    std::string_view insulation;
    int initial; // [degC]
    int final; // [degC]
    int k; // [A s^0.5 / mm2]
};
// A conductor of S mm2 bears I2t = k2 S2.
inline constexpr std::array<PrintedKRow, 8> printed_k{{
    {"PVC 70 degC, up to 300 mm2", 70, 160, 115},
    {"PVC 70 degC, above 300 mm2", 70, 140, 103},
    {"PVC 90 degC, up to 300 mm2", 90, 160, 100},
    {"PVC 90 degC, above 300 mm2", 90, 140, 86},
    {"XLPE or EPR 90 degC", 90, 250, 143},
    {"rubber 60 degC", 60, 200, 141},
    {"rubber 85 degC", 85, 220, 134},
    {"silicone", 180, 350, 132},
}};
inline constexpr Source printed_k_source = source_iec_60364;

} // namespace bankwright::tables::short_circuit
// clang-format on
