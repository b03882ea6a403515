// Every key of a file of readings, once.
#pragma once

#include "bankwright/config/key_spec.hpp"
#include "bankwright/config/keys.hpp"

#include <array>
#include <string_view>

namespace bankwright {

namespace keys {

inline constexpr Range shown_volts{-1000.0, 1000.0};
inline constexpr Range shown_amperes{-1e6, 1e6};

inline constexpr KeySpec rest{"rest", KeyKind::boolean, "true", "every motor and load is off",
                              "true unless throttle or current is given"};
inline constexpr KeySpec at_throttle{"throttle", KeyKind::fraction,
                                     "\"60 %\"", "throttle of the motors while it was read; loads as described",
                                     {},         part_of_whole};
inline constexpr KeySpec at_current{"current",  KeyKind::current,
                                    "\"20 A\"", "current through the motor, or the one load, while it was read",
                                    {},         amperes_or_none};

inline constexpr std::array readings_root{
    KeySpec{readings_version, KeyKind::integer, "1", "version of this format", "1", {1.0, 1.0}},
    KeySpec{"name", KeyKind::text, "\"Heron, after the first try\"", "what was read, for people"},
};
inline constexpr std::array meter{
    KeySpec{"accuracy", KeyKind::text, "\"0.5 % + 2 digits\"", "how far a voltage may be off, as its maker states it",
            "0.5 % + 2 digits"},
    KeySpec{"resolution", KeyKind::voltage, "\"10 mV\"", "its last digit", "10 mV", volts},
};
inline constexpr std::array clamp{
    KeySpec{"accuracy", KeyKind::text, "\"2 % + 5 digits\"", "how far a current may be off", "2 % + 5 digits"},
    KeySpec{"resolution", KeyKind::current, "\"0.1 A\"", "its last digit", "0.1 A", amperes},
};
inline constexpr std::array<std::string_view, 2> since_words{"it ran", "work on the bank"}; // in the order of Since
inline constexpr std::array state{
    rest,
    at_throttle,
    at_current,
    KeySpec{"since",
            KeyKind::choice,
            "\"it ran\"",
            "what happened since all was well: nothing but use, or somebody has been at the wiring",
            "not known",
            {},
            since_words},
};
inline constexpr std::array volts_entry{
    KeySpec{"red", KeyKind::terminal, "\"C+\"", "terminal under the red lead"},
    KeySpec{"black", KeyKind::terminal, "\"A-\"", "terminal under the black lead"},
    KeySpec{"reads", KeyKind::voltage, "\"12.6 V\"", "what the meter shows, with its sign", {}, shown_volts},
    rest,
    at_throttle,
    at_current,
};
inline constexpr std::array amps_entry{
    KeySpec{"part", KeyKind::text, "\"J1\"", "part whose current was read; its sign is that of `solve`"},
    KeySpec{"reads", KeyKind::current, "\"23 A\"", "what the clamp shows", {}, shown_amperes},
    rest,
    at_throttle,
    at_current,
};
inline constexpr std::array volts_needs{Requirement{"red"}, Requirement{"black"}, Requirement{"reads"}};
inline constexpr std::array amps_needs{Requirement{"part"}, Requirement{"reads"}};

} // namespace keys

inline constexpr SectionSpec readings_root_section{"", "a file of readings", keys::readings_root};
inline constexpr SectionSpec meter_section{"meter", "the voltmeter", keys::meter};
inline constexpr SectionSpec clamp_section{"clamp", "the clamp; that the section is there says that one is at hand",
                                           keys::clamp};
inline constexpr SectionSpec state_section{"state", "what the loads did, unless a reading says otherwise", keys::state};
inline constexpr SectionSpec volts_section{"volts", "voltages", keys::volts_entry, keys::volts_needs};
inline constexpr SectionSpec amps_section{"amps", "currents", keys::amps_entry, keys::amps_needs};
inline constexpr std::array<std::string_view, 5> reading_sections{"meter", "clamp", "state", "volts", "amps"};

constexpr bool is_reading_section(std::string_view name) {
    for (auto const known : reading_sections)
        if (known == name) return true;
    return false;
}

} // namespace bankwright
