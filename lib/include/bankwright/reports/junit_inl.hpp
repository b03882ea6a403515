#pragma once

#include "bankwright/reports/junit.hpp"
#include "bankwright/reports/tally.hpp"
#include "bankwright/text/xml_writer.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace bankwright {
namespace internal::junit {

struct Tally {
    std::size_t cases = 0;
    std::size_t failures = 0;
    std::size_t skipped = 0;
};

inline bool fails(Finding const& finding, Level fail_on) { return !finding.accepted && finding.level >= fail_on; }

inline Tally tally(Verdict const& verdict, Level fail_on) {
    fail_on = verdict.fail_on.value_or(fail_on);
    auto const left_out = verdict.left_out_rules.names.size();
    Tally out{std::max<std::size_t>(verdict.findings.size(), 1) + left_out, 0, left_out};
    for (auto const& finding : verdict.findings) {
        if (finding.accepted) ++out.skipped;
        if (fails(finding, fail_on)) ++out.failures;
    }
    return out;
}

inline void write(XmlWriter& xml, Tally const& tally) {
    xml.attribute("tests", std::to_string(tally.cases))
        .attribute("failures", std::to_string(tally.failures))
        .attribute("errors", "0")
        .attribute("skipped", std::to_string(tally.skipped))
        .attribute("time", "0");
}

inline std::string title(Finding const& finding) {
    if (finding.parts.empty()) return finding.rule;
    return fmt::format("{} {}", finding.rule, fmt::join(finding.parts, " "));
}

inline std::string body(Verdict const& verdict, Finding const& finding) {
    auto out = file_of(verdict, finding);
    if (finding.region) out += fmt::format(":{}:{}", finding.region->begin.line, finding.region->begin.column);
    out += fmt::format(": {}: {} [{}]", name(finding.level), finding.message, finding.rule);
    if (!finding.help.empty()) out += "\nhelp: " + finding.help;
    for (auto const& consequence : finding.consequences)
        out += "\nconsequence: " + consequence;
    return out;
}

inline void write(XmlWriter& xml, Verdict const& verdict, Finding const& finding, Level fail_on) {
    xml.open("testcase").attribute("name", title(finding)).attribute("classname", verdict.file).attribute("time", "0");
    if (finding.accepted) {
        xml.open("skipped").attribute("message", "accepted: " + finding.accepted_because).close();
    } else if (fails(finding, fail_on)) {
        xml.open("failure").attribute("message", finding.message).attribute("type", name(finding.level));
        xml.text(body(verdict, finding)).close();
    } else {
        xml.element("system-out", body(verdict, finding));
    }
    xml.close();
}

// A case of its own, skipped: a rule or family that the caller left out.
inline void left_out(XmlWriter& xml, Verdict const& verdict, std::string const& rule) {
    xml.open("testcase").attribute("name", rule).attribute("classname", verdict.file).attribute("time", "0");
    xml.open("skipped").attribute("message", "left out: " + rule).close().close();
}

inline void write(XmlWriter& xml, Verdict const& verdict, Level fail_on) {
    fail_on = verdict.fail_on.value_or(fail_on);
    xml.open("testsuite").attribute("name", verdict.file);
    write(xml, tally(verdict, fail_on));
    for (auto const& finding : verdict.findings)
        write(xml, verdict, finding, fail_on);
    if (verdict.findings.empty())
        xml.open("testcase")
            .attribute("name", nothing_wrong(0, verdict.left_out_rules.names.empty()))
            .attribute("classname", verdict.file)
            .attribute("time", "0")
            .close();
    for (auto const& rule : verdict.left_out_rules.names)
        left_out(xml, verdict, rule);
    xml.close();
}

} // namespace internal::junit

BANKWRIGHT_INLINE std::string findings_junit(Verdicts const& verdicts, Level fail_on) {
    internal::junit::Tally all;
    for (auto const& verdict : verdicts) {
        auto const one = internal::junit::tally(verdict, fail_on);
        all = {all.cases + one.cases, all.failures + one.failures, all.skipped + one.skipped};
    }
    XmlWriter xml;
    xml.declaration().open("testsuites").attribute("name", "bankwright");
    internal::junit::write(xml, all);
    for (auto const& verdict : verdicts)
        internal::junit::write(xml, verdict, fail_on);
    return std::move(xml).str();
}

} // namespace bankwright
