// One file's text and what is wrong with it: what the rules find, and what every report of findings is given.
#pragma once

#include "bankwright/findings/finding.hpp"
#include "bankwright/findings/left_out_rules.hpp"
#include "bankwright/findings/source_text.hpp"

#include <optional>
#include <string>
#include <vector>

namespace bankwright {

struct Verdict {
    std::string file;                         // as the user named it
    std::string text;                         // what it says; empty where there is no file
    std::optional<std::string> arrangement{}; // "3S1P", none where the wiring is no such thing
    Findings findings{};                      // located and in order
    std::vector<SourceText> part_lists{};     // those that findings point into
    LeftOutRules left_out_rules{};            // by the caller's choice
    std::optional<Level> fail_on{};           // from here on a finding fails; none: as the run as a whole says
};

// The file that a finding stands in, and its text.
inline std::string const& file_of(Verdict const& verdict, Finding const& finding) {
    return finding.file.empty() ? verdict.file : finding.file;
}
inline std::string const& text_of(Verdict const& verdict, Finding const& finding) {
    for (auto const& list : verdict.part_lists)
        if (!finding.file.empty() && list.file == finding.file) return list.text;
    return verdict.text;
}

using Verdicts = std::vector<Verdict>;

inline FindingCounts count(Verdicts const& verdicts) {
    FindingCounts all;
    for (auto const& verdict : verdicts) {
        auto const one = count(verdict.findings);
        all.error += one.error;
        all.warning += one.warning;
        all.note += one.note;
    }
    return all;
}

// How many that nobody has accepted are at this level or above it?
inline int count_from(Level level, FindingCounts const& counts) {
    switch (level) {
    case Level::error:
        return counts.error;
    case Level::warning:
        return counts.error + counts.warning;
    case Level::note:
        return counts.error + counts.warning + counts.note;
    }
    return 0;
}

} // namespace bankwright
