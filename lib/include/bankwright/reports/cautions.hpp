// What must a person know before touching the bank? The trade's usual cautions (common practice, no single source), by
// the work that they fit: each is said once on a sheet, and only where something sends somebody to the battery box.
#pragma once

#include "bankwright/findings/rule_id.hpp"
#include "bankwright/findings/verdict.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <string_view>
#include <vector>

namespace bankwright {

// Beside batteries that gas a spark is the last thing that is wanted: whoever finds a short touches nothing there.
inline constexpr std::string_view live_short_caution =
    "a short that is already joined: keep clear of the batteries, open a disconnect or fuse upstream if there is one, "
    "and break nothing under load by hand";

inline constexpr std::string_view disconnect_caution =
    "disconnect first: charger off, loads off, breaker open, plug out; then remove the negative lead before any "
    "other and put it back last";

inline constexpr std::string_view judgment_caution =
    "these checks do not replace judgment: local codes, the makers' instructions and a licensed or certified "
    "electrician decide";

inline constexpr std::array<std::string_view, 9> wiring_cautions{
    "a short through batteries flows as soon as the last lead touches, breaker open or not: thousands of amperes that "
    "melt tools and posts, start fires and can burst a battery",
    disconnect_caution,
    "wear eye protection and insulating gloves, use insulated tools, cover every post that you are not working on",
    "no rings, watches, bracelets or other metal jewelry",
    "ventilate the space and keep sparks and flames away: batteries on charge give off gas that explodes",
    "lead-acid batteries hold acid: keep eye rinse and baking soda at hand; flush eyes at once, for 15 minutes or "
    "more, and get medical help",
    "a battery is heavy: lift it by its handles or a strap, two people for a large one, nothing metal above its posts",
    "an inverter or motor control draws a spark when it is first joined, as its capacitors fill: make that contact "
    "at its switch or by its maker's precharge, never at a battery post",
    judgment_caution,
};

// A meter in the hand, on a bank that is live.
inline constexpr std::array<std::string_view, 7> measuring_cautions{
    "before each reading: meter on DC volts, its leads in the volt jacks; in an ampere jack a lead is a short",
    "shrouded probes, one hand where you can, the other off the metal; never touch two posts at once",
    "what you measure is live: eye protection, no metal jewelry, nothing loose that can fall across posts",
    "a current is read with a clamp, never by breaking a lead",
    live_short_caution,
    "to change anything found wrong, first make the bank dead: charger and loads off, breaker open, plug out, negative "
    "lead off first",
    judgment_caution,
};

// Does a finding say that batteries are shorted through the wiring as it is described?
inline bool is_short(Finding const& finding) {
    if (finding.accepted || finding.level != Level::error) return false;
    if (finding.rule == "wiring/reversed-battery") return finding.allowed == 0.0; // of a loop, not of a load
    constexpr std::array<std::string_view, 5> rules{"wiring/shorted-loop", "wiring/shorted-battery",
                                                    "wiring/unequal-strings", "matching/mixed-voltage",
                                                    "charging/not-isolated"};
    return std::find(rules.begin(), rules.end(), finding.rule) != rules.end();
}

// An error in the file's spelling alone sends nobody to the battery box; an error in the bank does.
inline bool calls_for_cautions(Findings const& findings) {
    return std::any_of(findings.begin(), findings.end(), [](Finding const& finding) {
        return finding.level == Level::error && !finding.accepted && family(finding.rule) != "file";
    });
}
inline bool calls_for_cautions(Verdicts const& verdicts) {
    return std::any_of(verdicts.begin(), verdicts.end(),
                       [](Verdict const& verdict) { return calls_for_cautions(verdict.findings); });
}

// Of the findings of one sheet: where a battery is shorted, what to do of that comes first.
inline std::vector<std::string_view> cautions_for(Findings const& findings) {
    std::vector<std::string_view> said;
    if (std::any_of(findings.begin(), findings.end(), is_short)) said.push_back(live_short_caution);
    said.insert(said.end(), wiring_cautions.begin(), wiring_cautions.end());
    return said;
}
inline std::vector<std::string_view> cautions_for(Verdicts const& verdicts) {
    for (auto const& verdict : verdicts)
        if (std::any_of(verdict.findings.begin(), verdict.findings.end(), is_short))
            return cautions_for(verdict.findings);
    return cautions_for(Findings{});
}

// Above a bank that is not hooked up for what is wrong with it.
inline std::vector<std::string_view> refusal_cautions(Findings const& findings) {
    if (std::any_of(findings.begin(), findings.end(), is_short)) return {live_short_caution, disconnect_caution};
    return {disconnect_caution};
}

// Whoever is about to put a bank together wires it and measures on it.
inline std::vector<std::string_view> hookup_cautions() {
    std::vector<std::string_view> said(wiring_cautions.begin(), wiring_cautions.end() - 1);
    said.insert(said.end(), measuring_cautions.begin(), measuring_cautions.begin() + 2);
    said.push_back(wiring_cautions.back());
    return said;
}

} // namespace bankwright
