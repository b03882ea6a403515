// What is said of a current that is a little above the nameplates.
#pragma once

#include "bankwright/rules/rule.hpp"
#include "bankwright/units/print.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace bankwright::internal {

// A finding that rests on a few per cent above the nameplates is a warning that says so.
inline void soften_above_nameplate(Finding& finding, Borne const& borne, Current limit) {
    if (!borne.is_little_above_nameplate(limit)) return;
    finding.level = std::min(finding.level, Level::warning);
    finding.message +=
        fmt::format("; by the nameplates it is {}, which is within the limit: on full batteries a motor draws more",
                    print(borne.by_nameplate));
    finding.help += "; if the motor's control holds it to less, state its `max_current`";
}

} // namespace bankwright::internal
