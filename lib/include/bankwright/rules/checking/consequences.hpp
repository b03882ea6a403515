// One fault, one finding: which rule's finding follows from which other's, where both are about one part.
#pragma once

#include "bankwright/findings/finding.hpp"
#include "bankwright/rules/catalog.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace bankwright {

struct Follows {
    std::string_view effect;
    std::string_view cause; // never of a lower level than the effect
};

inline constexpr std::array effects_and_causes{
    Follows{"wiring/loose-end", "wiring/open-circuit"},           // the other end of the gap
    Follows{"matching/mixed-voltage", "wiring/unequal-strings"},  // the odd battery makes the odd string
    Follows{"matching/mixed-charge", "matching/mixed-chemistry"}, // chemistries rest at different voltages
    Follows{"matching/mixed-charge", "sharing/reverse-charge"},
    Follows{"sharing/reverse-charge", "matching/mixed-chemistry"},
    Follows{"sharing/circulating", "matching/mixed-chemistry"},
    Follows{"sharing/circulating", "sharing/reverse-charge"},
    Follows{"sharing/circulating", "matching/mixed-charge"},
    Follows{"sharing/uneven", "matching/mixed-chemistry"},
    Follows{"sharing/uneven", "sharing/reverse-charge"}, // what flows at rest flows under load too
    Follows{"sharing/uneven", "matching/mixed-charge"},
    Follows{"sharing/uneven", "sharing/circulating"},
    Follows{"charging/rate", "sharing/over-current"}, // the same limit, and the charger is on
};

// Each consequence of a cause that is not told, as a finding of its own rule: about the parts that it names.
inline Findings told_without_cause(Finding const& cause, std::vector<std::string> const& parts) {
    Findings told;
    for (auto const& consequence : cause.consequences) {
        auto const at = consequence.rfind(" [");
        auto const id = std::string_view(consequence).substr(at + 2, consequence.size() - at - 3);
        for (auto const* info : all_rules()) {
            if (info->id != id) continue;
            auto finding = finding_of(*info, consequence.substr(0, at), std::string(info->fix));
            for (auto const& part : parts)
                if (finding.message.find("`" + part + "`") != std::string::npos) finding.parts.push_back(part);
            if (finding.parts.empty()) finding.parts = cause.parts;
            told.push_back(std::move(finding));
        }
    }
    return told;
}

// Turns each effect whose cause was found too into a consequence of that finding.
inline void fold_consequences(Findings& findings) {
    auto const share_a_part = [](Finding const& a, Finding const& b) {
        return std::any_of(a.parts.begin(), a.parts.end(), [&](std::string const& part) {
            return std::find(b.parts.begin(), b.parts.end(), part) != b.parts.end();
        });
    };
    for (auto const& follows : effects_and_causes) {
        for (std::size_t e = 0; e < findings.size(); ++e) {
            if (findings[e].rule != follows.effect) continue;
            auto const found = std::find_if(findings.begin(), findings.end(), [&](Finding const& finding) {
                return finding.rule == follows.cause && share_a_part(finding, findings[e]);
            });
            if (found == findings.end() || found->level < findings[e].level) continue;
            if (found->accepted && !findings[e].accepted) continue; // who accepts a cause has not accepted what it does
            found->consequences.push_back(fmt::format("{} [{}]", findings[e].message, follows.effect));
            for (auto& further : findings[e].consequences)
                found->consequences.push_back(std::move(further));
            findings.erase(findings.begin() + static_cast<std::ptrdiff_t>(e--));
        }
    }
}

} // namespace bankwright
