// What stands on a battery's label, as people type it: "12 V AGM 100 Ah", "lithium", "6v wet 220ah".
#pragma once

#include "bankwright/devices/battery.hpp"
#include "bankwright/planning/words/typed.hpp"

#include <array>
#include <optional>
#include <string>
#include <string_view>

#include <fmt/format.h>

namespace bankwright::internal::typed {

struct ChemistryWord {
    std::string_view word;
    Chemistry chemistry;
};
inline constexpr ChemistryWord chemistry_words[] = {
    {"flooded", Chemistry::flooded}, {"wet", Chemistry::flooded},     {"lead-acid", Chemistry::flooded},
    {"lead", Chemistry::flooded},    {"acid", Chemistry::flooded},    {"agm", Chemistry::agm},
    {"gel", Chemistry::gel},         {"lithium", Chemistry::lifepo4}, {"lifepo", Chemistry::lifepo4},
    {"lfp", Chemistry::lifepo4},     {"iron", Chemistry::lifepo4},    {"phosphate", Chemistry::lifepo4},
    {"nmc", Chemistry::nmc},
};

struct Label {
    Battery battery;
    std::string problem; // empty if all is well
};

// In any order; whatever is said, is said once.
inline Label label(std::string_view text) {
    Label out;
    auto const refuse = [&](std::string const& why) {
        out.problem = fmt::format("`{}` {}; write it as in `12 V AGM 100 Ah`", terminal_safe(text), why);
        return out;
    };
    auto const all = tokens(text);
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (!all[i].is_number) {
            std::optional<Chemistry> chemistry;
            for (auto const& word : chemistry_words)
                if (word.word == all[i].text) chemistry = word.chemistry;
            if (all[i].text == "lifepo" && i + 1 < all.size() && all[i + 1].text == "4") ++i;
            if (!chemistry)
                return refuse(fmt::format("has `{}`, which is not a chemistry", terminal_safe(all[i].text)));
            if (out.battery.chemistry && out.battery.chemistry != chemistry) return refuse("names two chemistries");
            out.battery.chemistry = chemistry;
            continue;
        }
        auto const unit = i + 1 < all.size() ? all[i + 1].text : std::string();
        if (unit_for(volts, unit)) {
            if (out.battery.voltage) return refuse("has two voltages");
            out.battery.voltage = parse<Voltage>(all[i].text + " V").value;
            if (!out.battery.voltage) return refuse("has a voltage that is not a number");
        } else if (unit_for(capacities, unit)) {
            if (out.battery.capacity) return refuse("has two capacities");
            out.battery.capacity = parse<Charge>(all[i].text + " Ah").value;
            if (!out.battery.capacity) return refuse("has a capacity that is not a number");
        } else {
            return refuse(fmt::format("has `{}` without V or Ah", terminal_safe(all[i].text)));
        }
        ++i;
    }
    return out;
}

} // namespace bankwright::internal::typed
