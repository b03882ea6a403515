#pragma once

#include "bankwright/reports/cautions.hpp"
#include "bankwright/reports/expectation.hpp"
#include "bankwright/reports/findings_text.hpp"
#include "bankwright/reports/measure.hpp"
#include "bankwright/reports/tally.hpp"
#include "bankwright/text/escape.hpp"
#include "bankwright/text/source_excerpt.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace bankwright {
namespace internal::text_report {

inline Ink ink(Level level) {
    switch (level) {
    case Level::error:
        return Ink::error;
    case Level::warning:
        return Ink::warning;
    case Level::note:
        return Ink::note;
    }
    return Ink::note;
}

inline std::string headline(Finding const& finding, std::string const& file, TextStyle const& style) {
    auto place = terminal_safe(file);
    if (finding.region) place += fmt::format(":{}:{}", finding.region->begin.line, finding.region->begin.column);
    auto const level =
        finding.accepted ? fmt::format("accepted {}", name(finding.level)) : std::string(name(finding.level));
    return fmt::format("{} {} {} [{}]\n", paint(Ink::strong, place + ":", style),
                       paint(ink(finding.level), level + ":", style),
                       paint(Ink::strong, terminal_safe(finding.message), style), terminal_safe(finding.rule));
}

inline std::string quoted_line(Finding const& finding, std::string const& source, TextStyle const& style) {
    if (!finding.region) return {};
    auto const seen = source_excerpt(source, *finding.region);
    if (!seen) return {};
    auto const number = std::to_string(finding.region->begin.line);
    return fmt::format(" {} | {}\n {} | {}\n", number, seen->line, std::string(number.size(), ' '),
                       paint(Ink::mark, seen->carets, style));
}

inline std::string measured(Finding const& finding) {
    std::string out;
    if (finding.found) out += "found: " + measure(*finding.found, finding.unit);
    if (finding.allowed)
        out += fmt::format("{}{}: {}", out.empty() ? "" : "  ", is_expectation(finding) ? "expected" : "allowed",
                           measure(*finding.allowed, finding.unit));
    return out.empty() ? out : "  " + out + "\n";
}

inline std::string consequences(Finding const& finding, TextStyle const& style) {
    auto const number = static_cast<int>(finding.consequences.size());
    if (number == 0) return {};
    if (!style.all) return fmt::format("  ... and {} of this, shown with --all\n", counted(number, "consequence"));
    std::string out;
    for (auto const& one : finding.consequences)
        out += fmt::format("  consequence: {}\n", terminal_safe(one));
    return out;
}

inline int accepted(Verdict const& verdict) {
    return static_cast<int>(std::count_if(verdict.findings.begin(), verdict.findings.end(),
                                          [](Finding const& finding) { return finding.accepted; }));
}

inline std::string summary(Verdict const& verdict) {
    auto const arrangement = verdict.arrangement ? terminal_safe(*verdict.arrangement) + ", " : std::string();
    auto const left_out = told(verdict.left_out_rules);
    return fmt::format("{}: {}{}{}{}\n", terminal_safe(verdict.file), arrangement,
                       tally(count(verdict.findings), accepted(verdict), left_out.empty()),
                       left_out.empty() ? "" : "; ", left_out);
}

} // namespace internal::text_report

BANKWRIGHT_INLINE std::string finding_text(Finding const& finding, std::string const& file, std::string const& source,
                                           TextStyle const& style) {
    using namespace internal::text_report;
    auto out = headline(finding, file, style) + quoted_line(finding, source, style) + measured(finding);
    if (finding.accepted) out += fmt::format("  accepted because: {}\n", terminal_safe(finding.accepted_because));
    if (!finding.help.empty()) out += fmt::format("  help: {}\n", terminal_safe(finding.help));
    return out + consequences(finding, style);
}

BANKWRIGHT_INLINE std::string findings_text(Verdicts const& verdicts, TextStyle const& style) {
    using namespace internal::text_report;
    std::string out;
    for (auto const& verdict : verdicts) {
        for (auto const& finding : verdict.findings) {
            if (finding.accepted && !style.all) continue;
            out += finding_text(finding, file_of(verdict, finding), text_of(verdict, finding), style) + "\n";
        }
    }
    if (calls_for_cautions(verdicts)) out += caution_text(cautions_for(verdicts), style) + "\n";
    int all_accepted = 0;
    bool all_rules = true;
    for (auto const& verdict : verdicts) {
        out += summary(verdict);
        all_rules = all_rules && verdict.left_out_rules.names.empty();
        all_accepted += accepted(verdict);
    }
    if (verdicts.size() > 1)
        out += fmt::format("{} files: {}\n", verdicts.size(), tally(count(verdicts), all_accepted, all_rules));
    return out;
}

BANKWRIGHT_INLINE std::string caution_text(std::span<std::string_view const> cautions, TextStyle const& style) {
    auto out = paint(Ink::strong, "before you touch the bank:", style) + "\n";
    for (auto const line : cautions)
        out += fmt::format("  - {}\n", line);
    return out;
}

BANKWRIGHT_INLINE std::string errors_first(std::string const& file, FindingCounts const& counts) {
    if (counts.error == 0) return {};
    return fmt::format("\n`bankwright check {}` finds {} in this bank: correct that before the last lead is landed; a "
                       "short flows from then on, breaker open or not\n",
                       terminal_safe(file), counted(counts.error, "error"));
}

} // namespace bankwright
