// Every key of the log of a hook-up, once.
#pragma once

#include "bankwright/bank/hookup_log.hpp"
#include "bankwright/config/key_spec.hpp"
#include "bankwright/config/keys.hpp"
#include "bankwright/config/reading_keys.hpp"

#include <array>
#include <string_view>

namespace bankwright {

namespace keys {

inline constexpr std::array log_root{
    KeySpec{log_version, KeyKind::integer, "1", "version of this format", "1", {1.0, 1.0}},
    KeySpec{"name", KeyKind::text, "\"Heron, first hook-up\"", "what was hooked up, for people"},
};
inline constexpr std::array log_entry{
    KeySpec{"when",
            KeyKind::choice,
            "\"before\"",
            "where on the sheet: a battery alone, one of the ohmmeter's checks, before or after a step, a step that is "
            "done with nothing to read, or a reading beside the sheet",
            {},
            {},
            log_when_words},
    KeySpec{"part", KeyKind::text, "\"J1\"", "battery, conductor or device that the line of the sheet is about"},
    KeySpec{"red", KeyKind::terminal, "\"C+\"", "terminal under the red lead, of `also`"},
    KeySpec{"black", KeyKind::terminal, "\"A-\"", "terminal under the black lead, of `also`"},
    KeySpec{"reads", KeyKind::text, "\"12.7 V\"",
            "what the meter shows: volts, ohms, `OL` for no path between the leads, or `ok` for as expected"},
    KeySpec{"time", KeyKind::text, "\"2026-12-01 09:30\"", "when it was read"},
};
inline constexpr std::array log_entry_needs{Requirement{"when"}, Requirement{"part | red black"}, Requirement{"reads"}};

} // namespace keys

inline constexpr SectionSpec log_root_section{"", "the log of a hook-up", keys::log_root};
inline constexpr SectionSpec log_entry_section{"read", "the answers, in the order in which they were given",
                                               keys::log_entry, keys::log_entry_needs};
// A table of texts by part; a program that writes a log by itself may leave it out.
inline constexpr std::string_view log_marks_section = "marks";
inline constexpr std::string_view log_marks_meaning =
    "a mark for each part of the bank that the log was begun on; one that has changed since is told by it";
inline constexpr std::array<std::string_view, 3> log_sections{"meter", "marks", "read"};

} // namespace bankwright
