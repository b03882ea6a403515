// What must a person know before touching the bank? The trade's usual cautions (common practice, no single source),
// said once in a report, and only where a finding sends somebody to the battery box.
#pragma once

#include "bankwright/findings/rule_id.hpp"
#include "bankwright/findings/verdict.hpp"

#include <algorithm>
#include <array>
#include <string_view>

namespace bankwright {

inline constexpr std::array<std::string_view, 6> cautions{
    "a short across a bank drives thousands of amperes: it melts tools and posts, starts fires and can burst a battery",
    "disconnect first: charger off, loads off, breaker open, plug out; then take off the negative lead before any "
    "other "
    "and put it back last",
    "wear eye protection and insulating gloves, use insulated tools, cover every post that you are not working on",
    "no rings, watches, bracelets or other metal jewelry",
    "ventilate the space and keep sparks and flames away: batteries on charge give off gas that explodes",
    "these checks replace nobody's judgment: local codes, the makers' instructions and a licensed or certified "
    "electrician decide",
};

// An error in the file's spelling alone sends nobody to the battery box; an error in the bank does.
inline bool calls_for_cautions(Verdicts const& verdicts) {
    return std::any_of(verdicts.begin(), verdicts.end(), [](Verdict const& verdict) {
        return std::any_of(verdict.findings.begin(), verdict.findings.end(), [](Finding const& finding) {
            return finding.level == Level::error && !finding.accepted && family(finding.rule) != "file";
        });
    });
}

} // namespace bankwright
