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
    "recalled for the NEC sizes, common practice for those below 15 A and for 120 A",
};

inline constexpr Source source_cfr_455{
    "33 CFR Part 183 Subpart I, and ABYC E-11.10",
    "183.455(b) and (c); E-11 overcurrent protection",
    "law as reprinted; binds boats with inboard gasoline engines, a design reference for others",
    "row by row: read, quoted or recalled",
};

inline constexpr Source source_abyc_interrupting{
    "ABYC E-11",
    "interrupting capacity by total connected cranking amperes (Table V-A in the 2010s numbering, IV in older, 3B in newer ones)",
    "trade reprint",
    "row by row: quoted or recalled",
};

inline constexpr Source source_abyc_large_bank{
    "ABYC E-11",
    "banks above 2200 cranking amperes or 500 Ah: the battery maker's short-circuit current, or 20 kA at 125 V d.c. where that exceeds 10 kA",
    "before July 2025",
    "quoted: an owners' forum",
};

inline constexpr Source source_abyc_parallel{
    "ABYC E-11",
    "11.10.1.4.1: in a parallel bank above 500 Ah a device between each battery and the main one, with the interrupting capacity of 11.10.1.3",
    "July 2025",
    "quoted: an owners' forum",
};

inline constexpr Source source_ul_489{
    "UL 489, molded-case breakers",
    "calibration at 100, 135 and 200 percent",
    "year not stated",
    "row by row: quoted or recalled",
};

inline constexpr Source source_iec_60898{
    "IEC 60898-1, breakers of types B, C, D",
    "time-current limits; instantaneous range, on direct current up to 1.4 times higher, as the magnet answers to the peak",
    "year not stated",
    "quoted: two trade pages for the ranges; times and the factor recalled",
};

inline constexpr Source source_iec_60934{
    "IEC 60934, circuit breakers for equipment, thermal",
    "conventional currents",
    "year not stated",
    "recalled",
};

inline constexpr Source source_sae_j553{
    "SAE J553, thermal breakers: type 1 resets itself, type 2 holds open while fed, type 3 is reset by hand",
    "trip limits at 100, 135 and 200 percent",
    "year not stated; types quoted: a trade page",
    "recalled, low",
};

inline constexpr Source source_iso_8820_3{
    "ISO 8820-3, blade fuses: type C medium, E high current (the large blade), F miniature",
    "operating times (kin of SAE J1284, J2077)",
    "2015 for types and scope (32 or 58 V, up to 100 A, breaking capacity 1000 A), quoted: a reseller's preview",
    "recalled",
};

inline constexpr Source source_iso_8820_4{
    "ISO 8820-4, fuses with female contacts (the plug-in cartridge)",
    "operating times",
    "year not stated",
    "recalled",
};

inline constexpr Source source_iso_8820_5{
    "ISO 8820-5, bolt-down strip fuses SF30 and SF51 (kin of SAE J1888)",
    "operating times",
    "2015 for the scope (32 V, 30 to 500 A, breaking capacity 2000 A), quoted: a reseller's page",
    "recalled",
};

inline constexpr Source source_iso_8820_6{
    "ISO 8820-6, single-bolt fuses (on the stud of a terminal)",
    "operating times, taken as those of ISO 8820-5",
    "year not stated",
    "recalled, low",
};

inline constexpr Source source_ul_248_14{
    "UL 248-14, supplementary fuses (glass and ceramic cartridges)",
    "opening at 135 and 200 percent",
    "year not stated",
    "quoted: a fuse maker's selection guide",
};

inline constexpr Source source_ul_248_15{
    "UL 248-15 with UL 248-1, class T fuses",
    "carries 110 percent; opening at 135 and 200 percent",
    "year not stated",
    "recalled",
};

inline constexpr Source source_iec_60127_2{
    "IEC 60127-2, cartridge fuses 5 x 20 mm",
    "standard sheets: 1 quick-acting and 5 time-lag of high breaking capacity, 2 and 3 of low",
    "year not stated",
    "recalled",
};

inline constexpr Source source_sae_j554{
    "SAE J554, glass cartridge fuses",
    "operating times",
    "1987",
    "recalled",
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
// How far along the conductor from its source the device may sit, where it cannot practically sit at the
// source.
inline constexpr std::array<DistancesRow, 3> distances{{
    {"from the source of power", 7, "read, 183.455(b)(1); ABYC alike, quoted: trade page"},
    {"enclosed all the way, where 7 in cannot practically be kept", 40, "read, 183.455(b)(2); ABYC alike, quoted: trade page"},
    {"enclosed all the way, fixed straight to a battery terminal", 72, "recalled, ABYC E-11"},
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
    {"ABYC E-11 and, from 50 V, 33 CFR 183.455(c)(2): the next standard size, if up to this", 1.5, "(c)(2) read; ABYC quoted: trade page"},
}};
inline constexpr Source rating_share_source = source_cfr_455;

struct InterruptingRow {
    int system_up_to; // [V]
    double cranking_up_to; // [A]
    int main_breaker; // [A]
    int branch_breaker; // [A]
    std::string_view mark;
};
// What a breaker must interrupt at least, by the cranking amperes of the batteries.
inline constexpr std::array<InterruptingRow, 5> interrupting{{
    {24, 650.0, 1500, 750, "quoted: trade reprint"},
    {24, 1100.0, 3000, 1500, "quoted: trade reprint"},
    {24, std::numeric_limits<double>::infinity(), 5000, 2500, "quoted: trade reprint"},
    {32, 1250.0, 3000, 1500, "recalled"},
    {32, std::numeric_limits<double>::infinity(), 5000, 2500, "recalled"},
}};
inline constexpr Source interrupting_source = source_abyc_interrupting;

struct LargeBankRow {
    int cranking; // [A]
    int ampere_hours; // [Ah]
    int makers_up_to; // [A]
    int interrupts; // [A]
};
// Above either, the battery maker's figure counts; where that exceeds the third, or is not known, the fourth is
// asked for.
inline constexpr std::array<LargeBankRow, 1> large_bank{{
    {2200, 500, 10000, 20000},
}};
inline constexpr Source large_bank_source = source_abyc_large_bank;

struct ParallelBankRow {
    int ampere_hours; // [Ah]
};
// Above it each battery of a parallel bank has a device of its own.
inline constexpr std::array<ParallelBankRow, 1> parallel_bank{{
    {500},
}};
inline constexpr Source parallel_bank_source = source_abyc_parallel;

struct TripPoint {
    double rating_up_to; // [A]
    double multiple; // [1]
    double at_least; // [s]
    double at_most; // [s]
    std::string_view mark;
};
// Holds its rating for good; at a multiple of it opens after at least and at most so many seconds.
inline constexpr std::array<TripPoint, 14> ul_489{{
    {30.0, 1.0, std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity(), "quoted: two trade papers"},
    {30.0, 1.35, 0.0, 3600.0, "quoted: two trade papers"},
    {30.0, 2.0, 0.0, 120.0, "quoted: two trade papers"},
    {50.0, 1.0, std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity(), "quoted: two trade papers"},
    {50.0, 1.35, 0.0, 3600.0, "quoted: two trade papers"},
    {50.0, 2.0, 0.0, 240.0, "recalled"},
    {100.0, 1.0, std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity(), "quoted: two trade papers"},
    {100.0, 1.35, 0.0, 7200.0, "recalled"},
    {100.0, 2.0, 0.0, 360.0, "recalled"},
    {150.0, 1.0, std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity(), "quoted: two trade papers"},
    {150.0, 1.35, 0.0, 7200.0, "recalled"},
    {150.0, 2.0, 0.0, 480.0, "recalled"},
    {std::numeric_limits<double>::infinity(), 1.0, std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity(), "quoted: two trade papers"},
    {std::numeric_limits<double>::infinity(), 1.35, 0.0, 7200.0, "recalled"},
}};
inline constexpr Source ul_489_source = source_ul_489;

// Type B on direct current. The lower bound stays that of alternating current, the safe side.
inline constexpr std::array<TripPoint, 10> iec_60898_b{{
    {32.0, 1.13, 3600.0, std::numeric_limits<double>::infinity(), "recalled"},
    {32.0, 1.45, 0.0, 3600.0, "recalled"},
    {32.0, 2.55, 1.0, 60.0, "recalled"},
    {32.0, 3.0, 0.1, 60.0, "quoted: a trade page; its time recalled"},
    {32.0, 7.0, 0.0, 0.1, "recalled; on a.c. at 5 times, quoted: a trade page"},
    {std::numeric_limits<double>::infinity(), 1.13, 3600.0, std::numeric_limits<double>::infinity(), "recalled"},
    {std::numeric_limits<double>::infinity(), 1.45, 0.0, 3600.0, "recalled"},
    {std::numeric_limits<double>::infinity(), 2.55, 1.0, 120.0, "recalled"},
    {std::numeric_limits<double>::infinity(), 3.0, 0.1, 120.0, "quoted: a trade page; its time recalled"},
    {std::numeric_limits<double>::infinity(), 7.0, 0.0, 0.1, "recalled; on a.c. at 5 times, quoted: a trade page"},
}};
inline constexpr Source iec_60898_b_source = source_iec_60898;

// Type C on direct current. The lower bound stays that of alternating current, the safe side.
inline constexpr std::array<TripPoint, 10> iec_60898_c{{
    {32.0, 1.13, 3600.0, std::numeric_limits<double>::infinity(), "recalled"},
    {32.0, 1.45, 0.0, 3600.0, "recalled"},
    {32.0, 2.55, 1.0, 60.0, "recalled"},
    {32.0, 5.0, 0.1, 60.0, "quoted: a trade page; its time recalled"},
    {32.0, 14.0, 0.0, 0.1, "recalled; on a.c. at 10 times, quoted: a trade page"},
    {std::numeric_limits<double>::infinity(), 1.13, 3600.0, std::numeric_limits<double>::infinity(), "recalled"},
    {std::numeric_limits<double>::infinity(), 1.45, 0.0, 3600.0, "recalled"},
    {std::numeric_limits<double>::infinity(), 2.55, 1.0, 120.0, "recalled"},
    {std::numeric_limits<double>::infinity(), 5.0, 0.1, 120.0, "quoted: a trade page; its time recalled"},
    {std::numeric_limits<double>::infinity(), 14.0, 0.0, 0.1, "recalled; on a.c. at 10 times, quoted: a trade page"},
}};
inline constexpr Source iec_60898_c_source = source_iec_60898;

// Type D on direct current. The lower bound stays that of alternating current, the safe side.
inline constexpr std::array<TripPoint, 10> iec_60898_d{{
    {32.0, 1.13, 3600.0, std::numeric_limits<double>::infinity(), "recalled"},
    {32.0, 1.45, 0.0, 3600.0, "recalled"},
    {32.0, 2.55, 1.0, 60.0, "recalled"},
    {32.0, 10.0, 0.1, 60.0, "quoted: a trade page; its time recalled"},
    {32.0, 28.0, 0.0, 0.1, "recalled; on a.c. at 20 times, quoted: a trade page"},
    {std::numeric_limits<double>::infinity(), 1.13, 3600.0, std::numeric_limits<double>::infinity(), "recalled"},
    {std::numeric_limits<double>::infinity(), 1.45, 0.0, 3600.0, "recalled"},
    {std::numeric_limits<double>::infinity(), 2.55, 1.0, 120.0, "recalled"},
    {std::numeric_limits<double>::infinity(), 10.0, 0.1, 120.0, "quoted: a trade page; its time recalled"},
    {std::numeric_limits<double>::infinity(), 28.0, 0.0, 0.1, "recalled; on a.c. at 20 times, quoted: a trade page"},
}};
inline constexpr Source iec_60898_d_source = source_iec_60898;

// Thermal breakers for equipment.
inline constexpr std::array<TripPoint, 2> iec_60934{{
    {std::numeric_limits<double>::infinity(), 1.05, 3600.0, std::numeric_limits<double>::infinity(), "recalled"},
    {std::numeric_limits<double>::infinity(), 1.4, 0.0, 3600.0, "recalled"},
}};
inline constexpr Source iec_60934_source = source_iec_60934;

// Thermal breakers of all three types.
inline constexpr std::array<TripPoint, 3> sae_j553{{
    {std::numeric_limits<double>::infinity(), 1.0, std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity(), "recalled"},
    {std::numeric_limits<double>::infinity(), 1.35, 0.0, 3600.0, "recalled"},
    {std::numeric_limits<double>::infinity(), 2.0, 0.0, 60.0, "recalled, low: 60 s in the small ratings"},
}};
inline constexpr Source sae_j553_source = source_sae_j553;

// Medium blade, type C, up to 40 A.
inline constexpr std::array<TripPoint, 12> iso_8820_3_c{{
    {30.0, 1.1, 360000.0, std::numeric_limits<double>::infinity(), "recalled"},
    {30.0, 1.35, 0.75, 1800.0, "recalled; 600 s for some ratings"},
    {30.0, 1.6, 0.25, 50.0, "recalled"},
    {30.0, 2.0, 0.15, 5.0, "recalled"},
    {30.0, 3.5, 0.04, 0.5, "recalled"},
    {30.0, 6.0, 0.02, 0.1, "recalled"},
    {std::numeric_limits<double>::infinity(), 1.1, 360000.0, std::numeric_limits<double>::infinity(), "recalled"},
    {std::numeric_limits<double>::infinity(), 1.35, 0.75, 1800.0, "recalled; 600 s for some ratings"},
    {std::numeric_limits<double>::infinity(), 1.6, 0.25, 50.0, "recalled"},
    {std::numeric_limits<double>::infinity(), 2.0, 0.15, 5.0, "recalled"},
    {std::numeric_limits<double>::infinity(), 3.5, 0.04, 0.5, "recalled"},
    {std::numeric_limits<double>::infinity(), 6.0, 0.02, 0.15, "recalled; of 40 A"},
}};
inline constexpr Source iso_8820_3_c_source = source_iso_8820_3;

// Miniature blade, type F, up to 30 A.
inline constexpr std::array<TripPoint, 6> iso_8820_3_f{{
    {std::numeric_limits<double>::infinity(), 1.1, 360000.0, std::numeric_limits<double>::infinity(), "recalled"},
    {std::numeric_limits<double>::infinity(), 1.35, 0.75, 1800.0, "recalled; 600 s for some ratings"},
    {std::numeric_limits<double>::infinity(), 1.6, 0.25, 50.0, "recalled"},
    {std::numeric_limits<double>::infinity(), 2.0, 0.15, 5.0, "recalled"},
    {std::numeric_limits<double>::infinity(), 3.5, 0.04, 0.5, "recalled"},
    {std::numeric_limits<double>::infinity(), 6.0, 0.02, 0.1, "recalled"},
}};
inline constexpr Source iso_8820_3_f_source = source_iso_8820_3;

// Large blade, type E, 20 to 100 A.
inline constexpr std::array<TripPoint, 5> iso_8820_3_e{{
    {std::numeric_limits<double>::infinity(), 1.1, 360000.0, std::numeric_limits<double>::infinity(), "recalled"},
    {std::numeric_limits<double>::infinity(), 1.35, 60.0, 1800.0, "recalled"},
    {std::numeric_limits<double>::infinity(), 2.0, 2.0, 50.0, "recalled"},
    {std::numeric_limits<double>::infinity(), 3.5, 0.2, 7.0, "recalled"},
    {std::numeric_limits<double>::infinity(), 6.0, 0.04, 1.0, "recalled"},
}};
inline constexpr Source iso_8820_3_e_source = source_iso_8820_3;

// A blade fuse of no stated body: miniature or medium up to 40 A, large above, as they are usually sold.
inline constexpr std::array<TripPoint, 17> iso_8820_3{{
    {30.0, 1.1, 360000.0, std::numeric_limits<double>::infinity(), "recalled"},
    {30.0, 1.35, 0.75, 1800.0, "recalled; 600 s for some ratings"},
    {30.0, 1.6, 0.25, 50.0, "recalled"},
    {30.0, 2.0, 0.15, 5.0, "recalled"},
    {30.0, 3.5, 0.04, 0.5, "recalled"},
    {30.0, 6.0, 0.02, 0.1, "recalled"},
    {40.0, 1.1, 360000.0, std::numeric_limits<double>::infinity(), "recalled"},
    {40.0, 1.35, 0.75, 1800.0, "recalled; 600 s for some ratings"},
    {40.0, 1.6, 0.25, 50.0, "recalled"},
    {40.0, 2.0, 0.15, 5.0, "recalled"},
    {40.0, 3.5, 0.04, 0.5, "recalled"},
    {40.0, 6.0, 0.02, 0.15, "recalled; of 40 A"},
    {std::numeric_limits<double>::infinity(), 1.1, 360000.0, std::numeric_limits<double>::infinity(), "recalled"},
    {std::numeric_limits<double>::infinity(), 1.35, 60.0, 1800.0, "recalled"},
    {std::numeric_limits<double>::infinity(), 2.0, 2.0, 50.0, "recalled"},
    {std::numeric_limits<double>::infinity(), 3.5, 0.2, 7.0, "recalled"},
    {std::numeric_limits<double>::infinity(), 6.0, 0.04, 1.0, "recalled"},
}};
inline constexpr Source iso_8820_3_source = source_iso_8820_3;

// Plug-in cartridge with female contacts.
inline constexpr std::array<TripPoint, 5> iso_8820_4{{
    {std::numeric_limits<double>::infinity(), 1.1, 360000.0, std::numeric_limits<double>::infinity(), "recalled"},
    {std::numeric_limits<double>::infinity(), 1.35, 60.0, 1800.0, "recalled"},
    {std::numeric_limits<double>::infinity(), 2.0, 2.0, 60.0, "recalled"},
    {std::numeric_limits<double>::infinity(), 3.5, 0.2, 7.0, "recalled"},
    {std::numeric_limits<double>::infinity(), 6.0, 0.04, 1.0, "recalled"},
}};
inline constexpr Source iso_8820_4_source = source_iso_8820_4;

// Bolt-down strip fuses.
inline constexpr std::array<TripPoint, 5> iso_8820_5{{
    {std::numeric_limits<double>::infinity(), 1.1, 14400.0, std::numeric_limits<double>::infinity(), "recalled"},
    {std::numeric_limits<double>::infinity(), 1.35, 120.0, 1800.0, "recalled"},
    {std::numeric_limits<double>::infinity(), 2.0, 1.0, 15.0, "recalled"},
    {std::numeric_limits<double>::infinity(), 3.5, 0.3, 5.0, "recalled"},
    {std::numeric_limits<double>::infinity(), 6.0, 0.1, 1.0, "recalled"},
}};
inline constexpr Source iso_8820_5_source = source_iso_8820_5;

// Single-bolt fuses. Nothing below the least time of the faster blade is promised.
inline constexpr std::array<TripPoint, 5> iso_8820_6{{
    {std::numeric_limits<double>::infinity(), 1.1, 14400.0, std::numeric_limits<double>::infinity(), "recalled, low"},
    {std::numeric_limits<double>::infinity(), 1.35, 0.0, 1800.0, "recalled, low"},
    {std::numeric_limits<double>::infinity(), 2.0, 0.0, 15.0, "recalled, low"},
    {std::numeric_limits<double>::infinity(), 3.5, 0.0, 5.0, "recalled, low"},
    {std::numeric_limits<double>::infinity(), 6.0, 0.0, 1.0, "recalled, low"},
}};
inline constexpr Source iso_8820_6_source = source_iso_8820_6;

// Supplementary cartridges up to 60 A.
inline constexpr std::array<TripPoint, 6> ul_248_14{{
    {30.0, 1.0, std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity(), "quoted: a fuse maker's selection guide"},
    {30.0, 1.35, 0.0, 3600.0, "quoted: a fuse maker's selection guide"},
    {30.0, 2.0, 0.0, 120.0, "quoted: a fuse maker's selection guide"},
    {std::numeric_limits<double>::infinity(), 1.0, std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity(), "quoted: a fuse maker's selection guide"},
    {std::numeric_limits<double>::infinity(), 1.35, 0.0, 3600.0, "quoted: a fuse maker's selection guide"},
    {std::numeric_limits<double>::infinity(), 2.0, 0.0, 240.0, "quoted: a fuse maker's selection guide"},
}};
inline constexpr Source ul_248_14_source = source_ul_248_14;

// Class T.
inline constexpr std::array<TripPoint, 20> ul_248_15{{
    {30.0, 1.1, std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity(), "recalled"},
    {30.0, 1.35, 0.0, 3600.0, "recalled"},
    {30.0, 2.0, 0.0, 120.0, "recalled"},
    {60.0, 1.1, std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity(), "recalled"},
    {60.0, 1.35, 0.0, 3600.0, "recalled"},
    {60.0, 2.0, 0.0, 240.0, "recalled"},
    {100.0, 1.1, std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity(), "recalled"},
    {100.0, 1.35, 0.0, 7200.0, "recalled"},
    {100.0, 2.0, 0.0, 360.0, "recalled"},
    {200.0, 1.1, std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity(), "recalled"},
    {200.0, 1.35, 0.0, 7200.0, "recalled"},
    {200.0, 2.0, 0.0, 480.0, "recalled"},
    {400.0, 1.1, std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity(), "recalled"},
    {400.0, 1.35, 0.0, 7200.0, "recalled"},
    {400.0, 2.0, 0.0, 600.0, "recalled"},
    {600.0, 1.1, std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity(), "recalled"},
    {600.0, 1.35, 0.0, 7200.0, "recalled"},
    {600.0, 2.0, 0.0, 720.0, "recalled"},
    {std::numeric_limits<double>::infinity(), 1.0, std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity(), "recalled"},
    {std::numeric_limits<double>::infinity(), 1.5, 0.0, 14400.0, "recalled"},
}};
inline constexpr Source ul_248_15_source = source_ul_248_15;

// Sheet 1: quick-acting, high breaking capacity.
inline constexpr std::array<TripPoint, 10> iec_60127_sheet_1{{
    {4.0, 1.5, 3600.0, std::numeric_limits<double>::infinity(), "recalled"},
    {4.0, 2.1, 0.0, 1800.0, "recalled"},
    {4.0, 2.75, 0.01, 2.0, "recalled"},
    {4.0, 4.0, 0.003, 0.3, "recalled"},
    {4.0, 10.0, 0.0, 0.02, "recalled"},
    {std::numeric_limits<double>::infinity(), 1.5, 3600.0, std::numeric_limits<double>::infinity(), "recalled"},
    {std::numeric_limits<double>::infinity(), 2.1, 0.0, 1800.0, "recalled"},
    {std::numeric_limits<double>::infinity(), 2.75, 0.01, 3.0, "recalled"},
    {std::numeric_limits<double>::infinity(), 4.0, 0.003, 0.3, "recalled"},
    {std::numeric_limits<double>::infinity(), 10.0, 0.0, 0.02, "recalled"},
}};
inline constexpr Source iec_60127_sheet_1_source = source_iec_60127_2;

// Sheet 2: quick-acting, low breaking capacity.
inline constexpr std::array<TripPoint, 5> iec_60127_sheet_2{{
    {std::numeric_limits<double>::infinity(), 1.5, 3600.0, std::numeric_limits<double>::infinity(), "recalled"},
    {std::numeric_limits<double>::infinity(), 2.1, 0.0, 1800.0, "recalled"},
    {std::numeric_limits<double>::infinity(), 2.75, 0.05, 2.0, "recalled"},
    {std::numeric_limits<double>::infinity(), 4.0, 0.01, 0.3, "recalled"},
    {std::numeric_limits<double>::infinity(), 10.0, 0.0, 0.02, "recalled"},
}};
inline constexpr Source iec_60127_sheet_2_source = source_iec_60127_2;

// Sheet 3: time-lag, low breaking capacity.
inline constexpr std::array<TripPoint, 5> iec_60127_sheet_3{{
    {std::numeric_limits<double>::infinity(), 1.5, 3600.0, std::numeric_limits<double>::infinity(), "recalled"},
    {std::numeric_limits<double>::infinity(), 2.1, 0.0, 120.0, "recalled"},
    {std::numeric_limits<double>::infinity(), 2.75, 0.6, 10.0, "recalled"},
    {std::numeric_limits<double>::infinity(), 4.0, 0.15, 3.0, "recalled"},
    {std::numeric_limits<double>::infinity(), 10.0, 0.02, 0.3, "recalled"},
}};
inline constexpr Source iec_60127_sheet_3_source = source_iec_60127_2;

// Sheet 5: time-lag, high breaking capacity.
inline constexpr std::array<TripPoint, 5> iec_60127_sheet_5{{
    {std::numeric_limits<double>::infinity(), 1.5, 3600.0, std::numeric_limits<double>::infinity(), "recalled"},
    {std::numeric_limits<double>::infinity(), 2.1, 0.0, 1800.0, "recalled"},
    {std::numeric_limits<double>::infinity(), 2.75, 0.75, 80.0, "recalled"},
    {std::numeric_limits<double>::infinity(), 4.0, 0.095, 5.0, "recalled"},
    {std::numeric_limits<double>::infinity(), 10.0, 0.01, 0.1, "recalled"},
}};
inline constexpr Source iec_60127_sheet_5_source = source_iec_60127_2;

// Glass cartridge fuses.
inline constexpr std::array<TripPoint, 3> sae_j554{{
    {std::numeric_limits<double>::infinity(), 1.1, 14400.0, std::numeric_limits<double>::infinity(), "recalled"},
    {std::numeric_limits<double>::infinity(), 1.35, 0.0, 3600.0, "recalled"},
    {std::numeric_limits<double>::infinity(), 2.0, 0.0, 10.0, "recalled; 5 s for the smaller ratings"},
}};
inline constexpr Source sae_j554_source = source_sae_j554;

} // namespace bankwright::tables::protection
// clang-format on
