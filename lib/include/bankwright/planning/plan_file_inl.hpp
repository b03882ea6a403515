#pragma once

#include "bankwright/config/write.hpp"
#include "bankwright/planning/plan_file.hpp"
#include "bankwright/units/print.hpp"

#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace bankwright {
namespace internal::planning {

// Into lines that a screen holds, those after the first further in.
inline void wrap(std::vector<std::string>& lines, std::string const& text) {
    constexpr std::size_t widest = 110;
    std::string line;
    std::size_t at = 0;
    while (at < text.size()) {
        auto const end = std::min(text.find(' ', at), text.size());
        auto const word = text.substr(at, end - at);
        if (!line.empty() && line.size() + 1 + word.size() > widest) {
            lines.push_back(std::exchange(line, "  " + word));
        } else {
            line += (line.empty() ? "" : " ") + word;
        }
        at = end + 1;
    }
    if (!line.empty()) lines.push_back(line);
}

// The section in which a reader looks for it.
inline std::string section_for(PlanChoice const& choice) {
    constexpr std::pair<std::string_view, std::string_view> places[]{
        {"battery", "batteries"},
        {"strings in parallel", "batteries"},
        {"main breaker", "breakers"},
        {"main fuse", "fuses"},
        {"a fuse in every string", "fuses"},
        {"conductors", "cables"},
        {"receptacle and plug", "connectors"},
        {"charger", "chargers"},
        {"charger's fuse and leads", "fuses"},
    };
    for (auto const& [what, section] : places)
        if (choice.what == what) return std::string(section);
    return "system";
}

} // namespace internal::planning

BANKWRIGHT_INLINE std::string in_words(Wish const& wish) {
    auto motor = fmt::format("a motor of {}", print(motor_current(wish)));
    if (wish.power) motor = fmt::format("a motor of {}, {}", print(*wish.power), print(motor_current(wish)));
    if (wish.thrust)
        motor = fmt::format("a motor of {:.4g} lbf of thrust, about {}", wish.thrust->value() / 4.4482216152605,
                            print(motor_current(wish)));
    return fmt::format("{}, {}, {} to the bow, {}{}", print(wish.system), motor, print(wish.run), print(wish.runtime),
                       wish.throttle ? " at " + print(*wish.throttle) + " throttle" : std::string());
}

BANKWRIGHT_INLINE std::string why_no_less(PlanChoice const& choice) {
    if (choice.less.empty() || choice.broken.empty()) return {};
    return fmt::format("{} would not do: {}", choice.less, choice.broken);
}

BANKWRIGHT_INLINE std::string plan_file(Wish const& wish, PlannedBank const& planned) {
    using namespace internal::planning;
    WriteNotes notes;
    wrap(notes.head, fmt::format("Planned by bankwright: {}.", in_words(wish)));
    wrap(notes.head,
         "Parts are of usual sizes, and lengths in the battery box are guesses: put in what is on your labels and "
         "what you measure, then let `bankwright check` look again.");
    for (auto const& choice : planned.choices) {
        auto& lines = notes.sections[section_for(choice)];
        wrap(lines, fmt::format("{}: {}, {}", choice.what, choice.chosen, choice.decided_by));
        if (auto const less = why_no_less(choice); !less.empty()) wrap(lines, "  " + less);
    }
    notes.parts["feed"] = "at most 7 in from the post to the device";
    notes.parts["main"] = notes.parts["return"] = "measured along the way that it goes";
    notes.parts["tail-p"] = notes.parts["tail-n"] = "the motor's own lead";
    if (!wish.current) notes.parts["motor"] = "its current is worked out: put in what is on its nameplate";
    return write(planned.bank, notes);
}

} // namespace bankwright
