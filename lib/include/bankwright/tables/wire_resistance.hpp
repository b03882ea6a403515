// What resistance may a copper conductor have, as the standards print it?
// Generated from data/tables/wire_resistance.toml by tests/structure/make_tables.py; do not edit.
#pragma once

#include "bankwright/tables/source.hpp"

#include <array>

// clang-format off
namespace bankwright::tables::wire_resistance {

inline constexpr Source source_iec_60228{
    "IEC 60228, conductors of insulated cables",
    "class 2 (stranded) and class 5 (flexible), maximum d.c. resistance at 20 degC",
    "as reprinted; three reprints agree",
    "quoted: three reprints",
};

inline constexpr Source source_nec_8{
    "NEC (NFPA 70) chapter 9",
    "Table 8, conductor properties, stranded copper, 75 degC",
    "as reprinted, year not stated",
    "quoted: reprints, uncoated in two, coated in one",
};

inline constexpr Source source_astm_lay{
    "ASTM B8, B174 and B496, stranded copper conductors",
    "standard increment of mass and d.c. resistance by stranding",
    "B496-04",
    "2 percent quoted: a reprint, for B496; the same of B8 and B174 recalled",
};

struct MetricRow {
    double square_millimeters; // [mm2]
    double plain; // [ohm/km at 20 degC]
    double tinned; // [ohm/km at 20 degC]
};
// Flexible conductors, as nearly all boat cable is.
inline constexpr std::array<MetricRow, 18> class_5{{
    {0.5, 39.0, 40.1},
    {0.75, 26.0, 26.7},
    {1.0, 19.5, 20.0},
    {1.5, 13.3, 13.7},
    {2.5, 7.98, 8.21},
    {4.0, 4.95, 5.09},
    {6.0, 3.3, 3.39},
    {10.0, 1.91, 1.95},
    {16.0, 1.21, 1.24},
    {25.0, 0.78, 0.795},
    {35.0, 0.554, 0.565},
    {50.0, 0.386, 0.393},
    {70.0, 0.272, 0.277},
    {95.0, 0.206, 0.21},
    {120.0, 0.161, 0.164},
    {150.0, 0.129, 0.132},
    {185.0, 0.106, 0.108},
    {240.0, 0.0801, 0.0817},
}};
inline constexpr Source class_5_source = source_iec_60228;

// Stranded conductors. At 50 mm2 class 5 is below class 2: that is so in the standard.
inline constexpr std::array<MetricRow, 18> class_2{{
    {0.5, 36.0, 36.7},
    {0.75, 24.5, 24.8},
    {1.0, 18.1, 18.2},
    {1.5, 12.1, 12.2},
    {2.5, 7.41, 7.56},
    {4.0, 4.61, 4.7},
    {6.0, 3.08, 3.11},
    {10.0, 1.83, 1.84},
    {16.0, 1.15, 1.16},
    {25.0, 0.727, 0.734},
    {35.0, 0.524, 0.529},
    {50.0, 0.387, 0.391},
    {70.0, 0.268, 0.27},
    {95.0, 0.193, 0.195},
    {120.0, 0.153, 0.154},
    {150.0, 0.124, 0.126},
    {185.0, 0.0991, 0.1},
    {240.0, 0.0754, 0.0762},
}};
inline constexpr Source class_2_source = source_iec_60228;

struct NecChapter9Row {
    int gauge; // [AWG]
    double uncoated; // [ohm per 1000 ft at 75 degC]
    double coated; // [ohm per 1000 ft at 75 degC]
};
// By gauge: 0 is 1/0, -1 is 2/0, -2 is 3/0, -3 is 4/0.
inline constexpr std::array<NecChapter9Row, 15> nec_chapter_9{{
    {18, 7.95, 8.45},
    {16, 4.99, 5.29},
    {14, 3.14, 3.26},
    {12, 1.98, 2.05},
    {10, 1.24, 1.29},
    {8, 0.778, 0.809},
    {6, 0.491, 0.51},
    {4, 0.308, 0.321},
    {3, 0.245, 0.254},
    {2, 0.194, 0.201},
    {1, 0.154, 0.16},
    {0, 0.122, 0.127},
    {-1, 0.0967, 0.101},
    {-2, 0.0766, 0.0797},
    {-3, 0.0608, 0.0626},
}};
inline constexpr Source nec_chapter_9_source = source_nec_8;

struct LayRow {
    double share; // [1]
};
// How much longer the strands are than the conductor.
inline constexpr std::array<LayRow, 1> lay{{
    {0.02},
}};
inline constexpr Source lay_source = source_astm_lay;

} // namespace bankwright::tables::wire_resistance
// clang-format on
