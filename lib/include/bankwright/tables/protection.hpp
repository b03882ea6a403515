// Which ratings do breakers and fuses come in, where do they go, what must they break, and how fast do they
// act?
// Generated from data/tables/protection.toml by tests/structure/make_tables.py; do not edit.
#pragma once

#include "bankwright/tables/source.hpp"

#include <array>
#include <limits>
#include <string_view>

// clang-format off
namespace bankwright::tables::protection {

inline constexpr Source source_standard_sizes{
    "NEC (NFPA 70) 240.6(A), and the smaller sizes that fuses and breakers for boats are sold in",
    "standard ampere ratings",
    "year not stated",
    "from memory for the NEC sizes, common practice for those below 15 A and for 120 A",
};

inline constexpr Source source_cfr_455{
    "33 CFR Part 183 Subpart I, and ABYC E-11.10",
    "183.455(b) and (c); E-11 overcurrent protection",
    "as reprinted; binds boats with inboard gasoline engines, a design reference for others",
    "row by row: read or from memory",
};

inline constexpr Source source_abyc_interrupting{
    "ABYC E-11",
    "Table V-A in the 2010s numbering, Table IV in older ones: interrupting capacity by total connected cranking amperes",
    "trade reprint",
    "row by row: read or from memory",
};

inline constexpr Source source_ul_489{
    "UL 489, moulded-case breakers",
    "calibration at 100, 135 and 200 percent",
    "as restated by two trade papers",
    "row by row: read or from memory",
};

inline constexpr Source source_iec_60898{
    "IEC 60898-1, breakers of types B, C, D",
    "time-current limits; instantaneous range",
    "year not stated",
    "from memory",
};

inline constexpr Source source_iso_8820_3{
    "ISO 8820-3, blade fuses (kin of SAE J1284, J2077)",
    "operating times, types C and F",
    "year not stated",
    "from memory",
};

inline constexpr Source source_iso_8820_5{
    "ISO 8820-5, bolt-down strip fuses SF30 and SF51 (kin of SAE J1888)",
    "operating times",
    "2015 for the scope",
    "from memory; scope (32 V, 30 to 500 A, breaking capacity 2000 A) read",
};

inline constexpr Source source_sae_j554{
    "SAE J554, glass cartridge fuses",
    "operating times",
    "1987",
    "from memory",
};

struct StandardSizesRow {
    double amperes; // [A]
};
// Ratings that one can buy.
inline constexpr std::array<StandardSizesRow, 36> standard_sizes{{
    {1.0},
    {2.0},
    {3.0},
    {5.0},
    {7.5},
    {10.0},
    {15.0},
    {20.0},
    {25.0},
    {30.0},
    {35.0},
    {40.0},
    {45.0},
    {50.0},
    {60.0},
    {70.0},
    {80.0},
    {90.0},
    {100.0},
    {110.0},
    {120.0},
    {125.0},
    {150.0},
    {175.0},
    {200.0},
    {225.0},
    {250.0},
    {300.0},
    {350.0},
    {400.0},
    {450.0},
    {500.0},
    {600.0},
    {700.0},
    {800.0},
    {1000.0},
}};
inline constexpr Source standard_sizes_source = source_standard_sizes;

struct DistancesRow {
    std::string_view where;
    int inches; // [in]
    std::string_view mark;
};
// How far along the conductor from its source the device may sit.
inline constexpr std::array<DistancesRow, 3> distances{{
    {"from the point of connection to the source", 7, "read, CFR 183.455(b) and ABYC alike"},
    {"enclosed all the way, fed from elsewhere than a battery terminal", 40, "read, CFR 183.455(b) and ABYC alike"},
    {"enclosed all the way, fixed straight to a battery terminal", 72, "from memory, ABYC E-11"},
}};
inline constexpr Source distances_source = source_cfr_455;

struct RatingShareRow {
    std::string_view rule;
    double share; // [1]
    std::string_view mark;
};
// Largest rating over the conductor's ampacity.
inline constexpr std::array<RatingShareRow, 2> rating_share{{
    {"33 CFR 183.455(c)(1), below 50 V: any rating up to this", 1.5, "read"},
    {"ABYC E-11 and 33 CFR 183.455(c)(2): the next standard size, if up to this", 1.5, "read"},
}};
inline constexpr Source rating_share_source = source_cfr_455;

struct InterruptingRow {
    int system_up_to; // [V]
    double cranking_up_to; // [A]
    int main_breaker; // [A]
    int branch_breaker; // [A]
    std::string_view mark;
};
// What a breaker must interrupt where only the cranking amperes of the batteries are known.
inline constexpr std::array<InterruptingRow, 5> interrupting{{
    {24, 650.0, 1500, 750, "read"},
    {24, 1100.0, 3000, 1500, "read"},
    {24, std::numeric_limits<double>::infinity(), 5000, 2500, "read"},
    {32, 1250.0, 3000, 1500, "from memory"},
    {32, std::numeric_limits<double>::infinity(), 5000, 2500, "from memory"},
}};
inline constexpr Source interrupting_source = source_abyc_interrupting;

struct TripPoint {
    double rating_up_to; // [A]
    double multiple; // [1]
    double at_least; // [s]
    double at_most; // [s]
    std::string_view mark;
};
// Holds its rating for good; at a multiple of it opens after at least and at most so many seconds.
inline constexpr std::array<TripPoint, 14> ul_489{{
    {30.0, 1.0, std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity(), "read"},
    {30.0, 1.35, 0.0, 3600.0, "read"},
    {30.0, 2.0, 0.0, 120.0, "read"},
    {50.0, 1.0, std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity(), "read"},
    {50.0, 1.35, 0.0, 3600.0, "read"},
    {50.0, 2.0, 0.0, 240.0, "from memory"},
    {100.0, 1.0, std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity(), "read"},
    {100.0, 1.35, 0.0, 7200.0, "from memory"},
    {100.0, 2.0, 0.0, 360.0, "from memory"},
    {150.0, 1.0, std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity(), "read"},
    {150.0, 1.35, 0.0, 7200.0, "from memory"},
    {150.0, 2.0, 0.0, 480.0, "from memory"},
    {std::numeric_limits<double>::infinity(), 1.0, std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity(), "read"},
    {std::numeric_limits<double>::infinity(), 1.35, 0.0, 7200.0, "from memory"},
}};
inline constexpr Source ul_489_source = source_ul_489;

// Type B.
inline constexpr std::array<TripPoint, 10> iec_60898_b{{
    {32.0, 1.13, 3600.0, std::numeric_limits<double>::infinity(), "from memory"},
    {32.0, 1.45, 0.0, 3600.0, "from memory"},
    {32.0, 2.55, 1.0, 60.0, "from memory"},
    {32.0, 3.0, 0.1, 60.0, "from memory"},
    {32.0, 5.0, 0.0, 0.1, "from memory"},
    {std::numeric_limits<double>::infinity(), 1.13, 3600.0, std::numeric_limits<double>::infinity(), "from memory"},
    {std::numeric_limits<double>::infinity(), 1.45, 0.0, 3600.0, "from memory"},
    {std::numeric_limits<double>::infinity(), 2.55, 1.0, 120.0, "from memory"},
    {std::numeric_limits<double>::infinity(), 3.0, 0.1, 120.0, "from memory"},
    {std::numeric_limits<double>::infinity(), 5.0, 0.0, 0.1, "from memory"},
}};
inline constexpr Source iec_60898_b_source = source_iec_60898;

// Type C.
inline constexpr std::array<TripPoint, 10> iec_60898_c{{
    {32.0, 1.13, 3600.0, std::numeric_limits<double>::infinity(), "from memory"},
    {32.0, 1.45, 0.0, 3600.0, "from memory"},
    {32.0, 2.55, 1.0, 60.0, "from memory"},
    {32.0, 5.0, 0.1, 60.0, "from memory"},
    {32.0, 10.0, 0.0, 0.1, "from memory"},
    {std::numeric_limits<double>::infinity(), 1.13, 3600.0, std::numeric_limits<double>::infinity(), "from memory"},
    {std::numeric_limits<double>::infinity(), 1.45, 0.0, 3600.0, "from memory"},
    {std::numeric_limits<double>::infinity(), 2.55, 1.0, 120.0, "from memory"},
    {std::numeric_limits<double>::infinity(), 5.0, 0.1, 120.0, "from memory"},
    {std::numeric_limits<double>::infinity(), 10.0, 0.0, 0.1, "from memory"},
}};
inline constexpr Source iec_60898_c_source = source_iec_60898;

// Type D.
inline constexpr std::array<TripPoint, 10> iec_60898_d{{
    {32.0, 1.13, 3600.0, std::numeric_limits<double>::infinity(), "from memory"},
    {32.0, 1.45, 0.0, 3600.0, "from memory"},
    {32.0, 2.55, 1.0, 60.0, "from memory"},
    {32.0, 10.0, 0.1, 60.0, "from memory"},
    {32.0, 20.0, 0.0, 0.1, "from memory"},
    {std::numeric_limits<double>::infinity(), 1.13, 3600.0, std::numeric_limits<double>::infinity(), "from memory"},
    {std::numeric_limits<double>::infinity(), 1.45, 0.0, 3600.0, "from memory"},
    {std::numeric_limits<double>::infinity(), 2.55, 1.0, 120.0, "from memory"},
    {std::numeric_limits<double>::infinity(), 10.0, 0.1, 120.0, "from memory"},
    {std::numeric_limits<double>::infinity(), 20.0, 0.0, 0.1, "from memory"},
}};
inline constexpr Source iec_60898_d_source = source_iec_60898;

// Blade fuses.
inline constexpr std::array<TripPoint, 6> iso_8820_3{{
    {std::numeric_limits<double>::infinity(), 1.1, 360000.0, std::numeric_limits<double>::infinity(), "from memory"},
    {std::numeric_limits<double>::infinity(), 1.35, 0.75, 1800.0, "from memory; 600 s for some types"},
    {std::numeric_limits<double>::infinity(), 1.6, 0.25, 50.0, "from memory"},
    {std::numeric_limits<double>::infinity(), 2.0, 0.15, 5.0, "from memory"},
    {std::numeric_limits<double>::infinity(), 3.5, 0.04, 0.5, "from memory"},
    {std::numeric_limits<double>::infinity(), 6.0, 0.02, 0.1, "from memory"},
}};
inline constexpr Source iso_8820_3_source = source_iso_8820_3;

// Bolt-down strip fuses.
inline constexpr std::array<TripPoint, 5> iso_8820_5{{
    {std::numeric_limits<double>::infinity(), 1.1, 14400.0, std::numeric_limits<double>::infinity(), "from memory"},
    {std::numeric_limits<double>::infinity(), 1.35, 120.0, 1800.0, "from memory"},
    {std::numeric_limits<double>::infinity(), 2.0, 1.0, 15.0, "from memory"},
    {std::numeric_limits<double>::infinity(), 3.5, 0.3, 5.0, "from memory"},
    {std::numeric_limits<double>::infinity(), 6.0, 0.1, 1.0, "from memory"},
}};
inline constexpr Source iso_8820_5_source = source_iso_8820_5;

// Glass cartridge fuses.
inline constexpr std::array<TripPoint, 3> sae_j554{{
    {std::numeric_limits<double>::infinity(), 1.1, 14400.0, std::numeric_limits<double>::infinity(), "from memory"},
    {std::numeric_limits<double>::infinity(), 1.35, 0.0, 3600.0, "from memory"},
    {std::numeric_limits<double>::infinity(), 2.0, 0.0, 10.0, "from memory; 5 s for the smaller ratings"},
}};
inline constexpr Source sae_j554_source = source_sae_j554;

} // namespace bankwright::tables::protection
// clang-format on
