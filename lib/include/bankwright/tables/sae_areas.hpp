// How much copper does a wire of an SAE size hold?
// Generated from data/tables/sae_areas.toml by tests/structure/make_tables.py; do not edit.
#pragma once

#include "bankwright/tables/source.hpp"

#include <array>

// clang-format off
namespace bankwright::tables::sae_areas {

inline constexpr Source source_sae_areas{
    "SAE J1127 and J1128, low-voltage battery and primary cable",
    "least area of conductor by SAE wire size",
    "year not stated; ABYC E-11 allows these areas",
    "quoted: two trade reprints",
};

struct SaeRow {
    int gauge; // [SAE]
    int circular_mils; // [cmil]
};
// Circular mils that a wire of an SAE size has at least: 3 to 12 percent less than the gauge of the same
// number.
inline constexpr std::array<SaeRow, 14> least_area{{
    {18, 1537},
    {16, 2336},
    {14, 3702},
    {12, 5833},
    {10, 9343},
    {8, 14810},
    {6, 24538},
    {4, 37360},
    {2, 62450},
    {1, 77790},
    {0, 98980},
    {-1, 125100},
    {-2, 158600},
    {-3, 205500},
}};
inline constexpr Source least_area_source = source_sae_areas;

} // namespace bankwright::tables::sae_areas
// clang-format on
