// How much current may a conductor carry for good?
// Generated from data/tables/ampacity.toml by tests/structure/make_tables.py; do not edit.
#pragma once

#include "bankwright/tables/source.hpp"

#include <array>
#include <string_view>

// clang-format off
namespace bankwright::tables::ampacity {

inline constexpr Source source_cfr_table_5{
    "33 CFR Part 183 Subpart I",
    "183.425, Table 5: insulated stranded copper, 30 degC ambient, outside engine spaces",
    "as reprinted; binds boats with inboard gasoline engines, a design reference for others",
    "read",
};

inline constexpr Source source_cfr_note_1{
    "33 CFR Part 183 Subpart I",
    "183.425, Table 5, note 1: engine spaces, 50 degC",
    "as reprinted",
    "row by row: quoted or recalled",
};

inline constexpr Source source_ul_1426{
    "UL 1426 boat cable, as ABYC E-11 applies it below 50 V; 33 CFR 183.425 Table 5 note 2 and 183.435(b) from 50 V",
    "current-carrying conductors bundled together",
    "trade reprint, year not stated",
    "row by row: quoted or recalled",
};

inline constexpr Source source_iso_10133{
    "ISO 10133 (superseded by ISO 13297)",
    "Table A.2, 30 degC ambient",
    "2012",
    "recalled; for comparison only",
};

struct ByGaugeRow {
    int gauge; // [AWG], read
    int c60; // [A], read
    int c75; // [A], read
    int c80; // [A], read
    int c90; // [A], read
    int c105; // [A], read
    int c125; // [A], read
    int c200; // [A], read
};
// Amperes by gauge (0 is 1/0, -3 is 4/0) and temperature rating of the insulation.
inline constexpr std::array<ByGaugeRow, 15> by_gauge{{
    {18, 10, 10, 15, 20, 20, 25, 25},
    {16, 15, 15, 20, 25, 25, 30, 35},
    {14, 20, 20, 25, 30, 35, 40, 45},
    {12, 25, 25, 35, 40, 45, 50, 55},
    {10, 40, 40, 50, 55, 60, 70, 70},
    {8, 55, 65, 70, 70, 80, 90, 100},
    {6, 80, 95, 100, 100, 120, 125, 135},
    {4, 105, 125, 130, 135, 160, 170, 180},
    {3, 120, 145, 150, 155, 180, 195, 210},
    {2, 140, 170, 175, 180, 210, 225, 240},
    {1, 165, 195, 210, 210, 245, 265, 280},
    {0, 195, 230, 245, 245, 285, 305, 325},
    {-1, 225, 265, 285, 285, 330, 355, 370},
    {-2, 260, 310, 330, 330, 385, 410, 430},
    {-3, 300, 360, 385, 385, 445, 475, 510},
}};
inline constexpr Source by_gauge_source = source_cfr_table_5;
inline constexpr std::array<std::string_view, 8> by_gauge_marks{
    "read", "read", "read", "read", "read", "read", "read", "read"};

struct EngineSpaceRow {
    int celsius; // [degC]
    double factor; // [1]
    std::string_view mark;
};
// What a conductor in an engine space keeps of its amperes, by temperature rating of the insulation.
inline constexpr std::array<EngineSpaceRow, 7> engine_space{{
    {60, 0.58, "quoted: a reprint of codes, as the NEC factor for 46 to 50 degC"},
    {75, 0.75, "quoted: a reprint of codes, as the NEC factor for 46 to 50 degC"},
    {80, 0.78, "recalled"},
    {90, 0.82, "quoted: a reprint of codes, as the NEC factor for 46 to 50 degC"},
    {105, 0.85, "quoted: two trade reprints"},
    {125, 0.89, "recalled"},
    {200, 1.0, "recalled"},
}};
inline constexpr Source engine_space_source = source_cfr_note_1;

struct BundledRow {
    int conductors;
    double factor; // [1]
    std::string_view mark;
};
// What each of several conductors keeps, from this many up to the next row. One or two keep all.
inline constexpr std::array<BundledRow, 4> bundled{{
    {3, 0.7, "quoted: trade reprint"},
    {4, 0.6, "quoted: trade reprint"},
    {7, 0.5, "quoted: trade reprint"},
    {25, 0.4, "recalled"},
}};
inline constexpr Source bundled_source = source_ul_1426;

struct Iso10133Row {
    double square_millimeters; // [mm2]
    int c60; // [A]
    int c70; // [A]
    int c85; // [A]
    int c105; // [A]
    int c125; // [A]
    int c200; // [A]
};
// Amperes by cross-section and temperature rating of the insulation. No limit is taken from this table.
inline constexpr std::array<Iso10133Row, 14> iso_10133{{
    {0.75, 8, 10, 12, 16, 20, 25},
    {1.0, 12, 14, 18, 20, 25, 35},
    {1.5, 16, 18, 21, 25, 30, 40},
    {2.5, 20, 25, 30, 35, 40, 45},
    {4.0, 30, 35, 40, 45, 50, 55},
    {6.0, 40, 45, 50, 60, 70, 75},
    {10.0, 60, 65, 70, 90, 100, 120},
    {16.0, 80, 90, 100, 130, 150, 170},
    {25.0, 110, 120, 140, 170, 185, 200},
    {35.0, 140, 160, 185, 210, 225, 240},
    {50.0, 180, 210, 230, 270, 300, 325},
    {70.0, 220, 265, 285, 330, 360, 375},
    {95.0, 260, 310, 330, 390, 410, 430},
    {120.0, 300, 360, 400, 450, 480, 520},
}};
inline constexpr Source iso_10133_source = source_iso_10133;

} // namespace bankwright::tables::ampacity
// clang-format on
