// What is wrong, one by one: what was found, what is allowed, what to do, why, and where the limit comes from.
#pragma once

#include "bankwright/page/bank_report.hpp"
#include "bankwright/page/chapters/signs.hpp"
#include "bankwright/page/html/html.hpp"
#include "bankwright/page/html/sentences.hpp"
#include "bankwright/reports/expectation.hpp"
#include "bankwright/reports/measure.hpp"
#include "bankwright/reports/tally.hpp"

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>

#include <fmt/format.h>

namespace bankwright::page {

inline RuleInfo const* rule_of(BankReport const& report, Finding const& finding) {
    for (auto const* rule : report.rules)
        if (rule->id == finding.rule) return rule;
    return nullptr;
}

// "`troll` sees 12 V [wiring/system-voltage]" without the name of the rule: nobody on a dock asks for it.
inline std::string_view without_rule(std::string_view message) {
    auto const at = message.rfind(" [");
    return !message.empty() && message.back() == ']' && at != std::string_view::npos ? message.substr(0, at) : message;
}

inline void consequences(Html& html, Finding const& finding) {
    constexpr std::size_t most = 5;
    auto const& all = finding.consequences;
    if (all.empty()) return;
    html.open("div").element("dt", "Follows from it").open("dd").open("ul");
    for (std::size_t i = 0; i < std::min(most, all.size()); ++i)
        html.open("li").prose(sentence(without_rule(all[i]))).close();
    if (all.size() > most) html.element("li", fmt::format("And {} more.", all.size() - most));
    html.close().close().close();
}

inline void one_finding(Html& html, BankReport const& report, Finding const& finding, std::string const& title) {
    html.open("article", "finding " + std::string(name(finding.level)));
    html.open("h3").picture(sign(finding.level)).element("span", title).close();
    html.paragraph(sentence(finding.message));
    html.open("dl");
    bool const is_limit = !is_expectation(finding);
    if (finding.found || finding.allowed)
        html.fact(is_limit ? "Found and allowed" : "Found and expected",
                  (finding.found ? with_unit_signs(measure(*finding.found, finding.unit)) + " found" : std::string()) +
                      (finding.found && finding.allowed ? ", " : "") +
                      (finding.allowed ? with_unit_signs(measure(*finding.allowed, finding.unit)) +
                                             (is_limit ? " allowed" : " expected")
                                       : std::string()));
    if (finding.accepted) html.fact("Accepted, because", finding.accepted_because);
    if (!finding.help.empty()) html.fact("What to do", sentence(finding.help));
    if (auto const* rule = rule_of(report, finding)) {
        html.fact("Why it matters", sentence(rule->why));
        html.fact("Where the limit comes from", sentence(rule->source));
    }
    auto place = finding.region ? fmt::format("{}, line {}; ", file_name(file_of(report.verdict, finding)),
                                              finding.region->begin.line)
                                : std::string();
    html.fact("In the file", place + "rule " + finding.rule);
    consequences(html, finding);
    html.close().close();
}

inline void findings_chapter(Html& html, BankReport const& report) {
    constexpr int most = 200;
    html.folded_chapter("findings", "What was found");
    int number = 0, accepted = 0;
    for (auto const& finding : report.verdict.findings) {
        if (finding.accepted && ++accepted > 0) continue;
        if (++number <= most)
            one_finding(
                html, report, finding,
                fmt::format("{} {}", sentence(name(finding.level)).substr(0, name(finding.level).size()), number));
    }
    if (number > most) html.paragraph(fmt::format("And {} more; the `check` command lists them all.", number - most));
    if (number == 0)
        html.paragraph(fmt::format("Nothing. {} were looked for: wiring, matching of the batteries, sharing, copper, "
                                   "breakers and fuses, joints, charging, loads.",
                                   counted(static_cast<int>(report.rules.size()), "kind") + " of fault"));
    if (accepted > 0) html.element("h3", "Looked at, and accepted with a reason");
    for (auto const& finding : report.verdict.findings)
        if (finding.accepted) one_finding(html, report, finding, "Accepted " + std::string(name(finding.level)));
    html.close();
}

} // namespace bankwright::page
