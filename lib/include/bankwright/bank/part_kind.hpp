// The kinds of part that a bank is made of, with the words that the file and the JSON use for them.
#pragma once

#include <array>
#include <cstddef>
#include <string_view>

namespace bankwright {

enum class PartKind {
    battery,
    jumper,
    cable,
    breaker,
    fuse,
    switch_,
    shunt,
    relay,
    selector,
    busbar,
    connector,
    motor,
    load,
    charger,
    converter
};

inline constexpr std::array<std::string_view, 15> part_kind_names{
    "battery",  "jumper", "cable",     "breaker", "fuse", "switch",  "shunt",    "relay",
    "selector", "busbar", "connector", "motor",   "load", "charger", "converter"};
inline constexpr std::array<std::string_view, 15> section_names{
    "batteries", "jumpers", "cables",     "breakers", "fuses", "switches", "shunts",    "relays",
    "selectors", "busbars", "connectors", "motors",   "loads", "chargers", "converters"};

constexpr std::string_view name(PartKind kind) { return part_kind_names[static_cast<std::size_t>(kind)]; }
constexpr std::string_view section(PartKind kind) { return section_names[static_cast<std::size_t>(kind)]; }

} // namespace bankwright
