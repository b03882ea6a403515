// What every report on a bank begins with: which file it is about, how that is wired, and what `check` says of it.
#pragma once

#include "bankwright/findings/finding.hpp"
#include "bankwright/findings/verdict.hpp"
#include "bankwright/reports/assumption_words.hpp"

#include <optional>
#include <string>
#include <vector>

namespace bankwright {

struct ReportHead {
    std::string file;                       // as the user named it
    std::string text;                       // what it says; empty where there is no file
    std::optional<std::string> arrangement; // "3S1P", none where the wiring is no such thing
    FindingCounts counts;                   // what `check` has to say about the same bank
    std::vector<std::string> assumed{};     // where the file does not say
};

inline ReportHead head_of(Verdict const& verdict) {
    return {verdict.file, verdict.text, verdict.arrangement, count(verdict.findings)};
}

inline ReportHead head_of(Verdict const& verdict, Bank const& bank, Asked asked, bool part_throttle = false) {
    auto head = head_of(verdict);
    head.assumed = assumptions(bank, asked, part_throttle);
    return head;
}

} // namespace bankwright
