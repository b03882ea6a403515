// One thing that is wrong: which rule, which parts, what was found, what is allowed, what to do.
// A finding names parts and a key, not a line; where there is a file, its source map gives the line.
#pragma once

#include "bankwright/findings/level.hpp"
#include "bankwright/findings/position.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace bankwright {

struct Finding {
    std::string rule{}; // id of its RuleInfo
    Level level = Level::error;
    std::string message{};                   // lower case, no full stop; found value then allowed value, with units
    std::string help{};                      // what to do
    std::vector<std::string> parts{};        // ids, the cause first
    std::string key{};                       // the key of parts.front() that is to blame; empty: the part as a whole
    std::optional<double> found{};           // in `unit`
    std::optional<double> allowed{};         // in `unit`
    std::string unit{};                      // "V", "A", ...; empty where found and allowed are
    std::optional<Region> region{};          // where it stands in the file, if there is one
    std::string file{};                      // the part list that it stands in; empty: the bank file itself
    bool accepted = false;                   // somebody has looked at it and given a reason
    std::string accepted_because{};          // that reason
    std::vector<std::string> consequences{}; // messages of what follows from it, kept quiet
};

using Findings = std::vector<Finding>;

struct FindingCounts {
    int error = 0;
    int warning = 0;
    int note = 0;
};

// Accepted findings are not counted.
inline FindingCounts count(Findings const& findings) {
    FindingCounts counts;
    for (auto const& finding : findings) {
        if (finding.accepted) continue;
        switch (finding.level) {
        case Level::error:
            ++counts.error;
            break;
        case Level::warning:
            ++counts.warning;
            break;
        case Level::note:
            ++counts.note;
            break;
        }
    }
    return counts;
}

} // namespace bankwright
