#pragma once

#include "bankwright/bank/locate.hpp"
#include "bankwright/config/read.hpp"
#include "bankwright/findings/order.hpp"
#include "bankwright/findings/rule_id.hpp"
#include "bankwright/rules/inspect.hpp"

#include <utility>

namespace bankwright {

namespace inspection {

// Where parts are missing, only that is said which more parts cannot make untrue: a short stays a short.
inline bool holds_whatever_is_missing(Finding const& finding) {
    return finding.rule == "wiring/short-loop" || finding.rule == "wiring/shorted-battery" ||
           family(finding.rule) == "matching";
}

} // namespace inspection

BANKWRIGHT_INLINE Inspection inspect(std::string_view text, CheckOptions const& rules, ReadLimits const& limits) {
    auto read = bankwright::read(text, limits);
    Inspection seen;
    seen.findings = std::move(read.findings);
    seen.readable = read.readable;
    seen.as_written = read.readable && count(seen.findings).error == 0;
    if (read.readable) {
        bool const whole = read.left_out.empty();
        auto checked = check(read.bank, rules);
        if (whole) seen.arrangement = std::move(checked.arrangement);
        for (auto& finding : checked.findings)
            if (whole || inspection::holds_whatever_is_missing(finding)) seen.findings.push_back(std::move(finding));
    }
    locate(seen.findings, read.map);
    order(seen.findings);
    seen.bank = std::move(read.bank);
    seen.map = std::move(read.map);
    seen.left_out = std::move(read.left_out);
    return seen;
}

} // namespace bankwright
