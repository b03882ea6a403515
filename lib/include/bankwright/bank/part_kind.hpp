// The kinds of part that a bank is made of, with the words that the file and the JSON use for them.
#pragma once

#include <array>
#include <cstddef>
#include <string_view>

namespace bankwright {

enum class PartKind { battery, jumper, cable, breaker, fuse, switch_, busbar, connector, motor, load, charger };

inline constexpr std::array<std::string_view, 11> part_kind_names{
    "battery", "jumper", "cable", "breaker", "fuse", "switch", "busbar", "connector", "motor", "load", "charger"};
inline constexpr std::array<std::string_view, 11> section_names{"batteries", "jumpers",  "cables",  "breakers",
                                                                "fuses",     "switches", "busbars", "connectors",
                                                                "motors",    "loads",    "chargers"};

constexpr std::string_view name(PartKind kind) { return part_kind_names[static_cast<std::size_t>(kind)]; }
constexpr std::string_view section(PartKind kind) { return section_names[static_cast<std::size_t>(kind)]; }

} // namespace bankwright
