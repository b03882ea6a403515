// What resistance has a joint?
// Generated from data/tables/joints.toml by tests/structure/make_tables.py; do not edit.
#pragma once

#include "bankwright/tables/source.hpp"

#include <array>
#include <string_view>

// clang-format off
namespace bankwright::tables::joints {

inline constexpr Source source_mil_83454{
    "MIL-DTL-83454A",
    "4.5.3 (at most 7.5 mV at rated current) and Table VIII (rated current by stud)",
    "A",
    "read; the resistance is derived",
};

inline constexpr Source source_usual{
    "common practice, no single source",
    "sound joints, new",
    "none",
    "common practice",
};

struct StudsRow {
    std::string_view stud;
    int amperes; // [A]
    double volts; // [V]
};
// A stud terminal at its rated current.
inline constexpr std::array<StudsRow, 4> studs{{
    {"6-32", 25, 0.0075},
    {"8-32", 30, 0.0075},
    {"10-32", 35, 0.0075},
    {"1/4-28", 43, 0.0075},
}};
inline constexpr Source studs_source = source_mil_83454;

struct UsualRow {
    std::string_view joint;
    double low; // [ohm]
    double high; // [ohm]
};
// What one finds between the two sides of a joint.
inline constexpr std::array<UsualRow, 5> usual{{
    {"crimped lug, 6 AWG to 4/0", 2e-05, 0.0001},
    {"crimped lug, 18 to 10 AWG", 0.0002, 0.001},
    {"ring bolted on a stud", 2e-05, 0.0002},
    {"contact pair of a heavy plug and receptacle", 0.0001, 0.001},
    {"knife or rotary battery switch", 0.0001, 0.0003},
}};
inline constexpr Source usual_source = source_usual;

} // namespace bankwright::tables::joints
// clang-format on
