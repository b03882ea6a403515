// Bodies of hookup_words.hpp.
#pragma once

#include "bankwright/reports/hookup_words.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include <fmt/format.h>

namespace bankwright {
namespace internal::hookup_words {

// "A, B or C"; "A, B, C or 5 others"
inline std::string listed(std::vector<std::string> names) {
    constexpr std::size_t most = 4;
    if (names.size() > most) {
        auto const others = fmt::format("{} others", names.size() - (most - 1));
        names.resize(most - 1);
        names.push_back(others);
    }
    std::string out;
    for (std::size_t n = 0; n < names.size(); ++n)
        out += (n == 0 ? "" : n + 1 == names.size() ? " or " : ", ") + names[n];
    return out;
}

// Mistakes that differ in one name only are one phrase with several names in it.
struct Phrase {
    MistakeKind kind;
    std::string key; // what they have in common
    std::string at;
    std::vector<std::string> names;
};

inline std::vector<Phrase> phrases(WrongReading const& wrong) {
    std::vector<Phrase> found;
    for (auto const& cause : wrong.causes) {
        auto const& mistake = cause.mistake;
        bool const end = mistake.kind == MistakeKind::end_elsewhere;
        bool const leads = mistake.kind == MistakeKind::leads_exchanged;
        auto const key = end ? mistake.part : std::string();
        auto const name = end ? mistake.onto : leads ? mistake.at + " and " + mistake.onto : mistake.part;
        auto const same = std::find_if(found.begin(), found.end(), [&](Phrase const& phrase) {
            return phrase.kind == mistake.kind && phrase.key == key && (!end || phrase.at == mistake.at);
        });
        if (same != found.end())
            same->names.push_back(name);
        else
            found.push_back({mistake.kind, key, mistake.at, {name}});
    }
    return found;
}

inline std::string say(Phrase const& phrase) {
    auto const names = listed(phrase.names);
    switch (phrase.kind) {
    case MistakeKind::battery_turned:
        return names + " is the wrong way round";
    case MistakeKind::battery_low:
        return names + " is nearly flat";
    case MistakeKind::cell_dead:
        return "a cell of " + names + " is dead";
    case MistakeKind::end_elsewhere:
        return phrase.key + " is on " + names + ", not on " + phrase.at;
    case MistakeKind::leads_exchanged:
        return "the leads on " + names + " are exchanged";
    case MistakeKind::load_on:
        return names + " is not off";
    }
    return {};
}

} // namespace internal::hookup_words

BANKWRIGHT_INLINE std::string shown(std::optional<Voltage> const& reading, HookupOptions const& options) {
    if (!reading) return "floating";
    auto const volts = reading->value();
    auto const digit = options.resolution ? options.resolution->value() : std::abs(volts) < 20.0 ? 0.01 : 0.1;
    auto const decimals = std::clamp(static_cast<int>(std::ceil(-std::log10(digit) - 1e-9)), 0, 6);
    auto text = fmt::format("{:.{}f} V", volts, decimals);
    if (text.front() == '-' && text.find_first_of("123456789") == std::string::npos) text.erase(0, 1);
    return text;
}

BANKWRIGHT_INLINE std::string in_words(HookupAction action, bool undo) {
    switch (action) {
    case HookupAction::land:
        return undo ? "take off" : "land";
    case HookupAction::fit:
        return undo ? "take out fuse" : "fit fuse";
    case HookupAction::close:
        return undo ? "open" : "close";
    case HookupAction::mate:
        return undo ? "pull the plug of" : "push in the plug of";
    }
    return {};
}

BANKWRIGHT_INLINE std::string said(WrongReading const& wrong, std::size_t most) {
    auto const all = internal::hookup_words::phrases(wrong);
    std::string out;
    for (std::size_t p = 0; p < std::min(most, all.size()); ++p)
        out += (p == 0 ? "" : ", or ") + internal::hookup_words::say(all[p]);
    if (all.size() > most) out += fmt::format(", or {} more", all.size() - most);
    return out;
}

} // namespace bankwright
