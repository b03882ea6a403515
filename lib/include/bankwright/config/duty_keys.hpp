// Every key of a duty file, once.
#pragma once

#include "bankwright/config/key_spec.hpp"
#include "bankwright/config/keys.hpp"

#include <array>
#include <string_view>

namespace bankwright {

inline constexpr std::string_view duty_version = "bankwright-duty";

namespace keys {

inline constexpr std::array duty_root{
    KeySpec{duty_version, KeyKind::integer, "1", "version of this format", "1", {1.0, 1.0}},
    KeySpec{"name", KeyKind::text, "\"Tern, to the far bank and back\"", "what trip it is, for people"},
    KeySpec{"repeat", KeyKind::boolean, "true", "the legs start over until the bank is done", "false"},
};
inline constexpr std::array duty_leg{
    KeySpec{"throttle", KeyKind::fraction, "\"60 %\"", "of every motor; 0 % lies still", {}, part_of_whole},
    KeySpec{"duration", KeyKind::duration, "\"20 min\"", "how long it lasts", {}, seconds},
};
inline constexpr std::array duty_leg_needs{Requirement{"throttle"}, Requirement{"duration"}};

} // namespace keys

inline constexpr SectionSpec duty_root_section{"", "a duty file", keys::duty_root};
inline constexpr SectionSpec duty_leg_section{"leg", "a stretch of the trip", keys::duty_leg, keys::duty_leg_needs};

} // namespace bankwright
