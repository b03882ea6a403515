#pragma once

#include "bankwright/bank/locate.hpp"
#include "bankwright/bank/terminals.hpp"
#include "bankwright/config/read.hpp"
#include "bankwright/findings/order.hpp"
#include "bankwright/findings/rule_id.hpp"
#include "bankwright/rules/checking/chosen_rules.hpp"
#include "bankwright/rules/inspect.hpp"

#include <algorithm>
#include <string>
#include <unordered_set>
#include <utility>

namespace bankwright {

namespace internal::inspection {

// Where parts are missing, only that is said which more parts cannot make untrue: a short stays a short.
inline bool holds_whatever_is_missing(Finding const& finding) {
    return finding.rule == "wiring/shorted-loop" || finding.rule == "wiring/shorted-battery" ||
           family(finding.rule) == "matching";
}

// A conductor may name a terminal of a part that is missing: then it lands nowhere, and no network has it.
inline Bank without_stray_conductors(Bank bank) {
    auto const all = terminals_of(bank);
    std::unordered_set<std::string> const terminals(all.begin(), all.end());
    for (auto* const runs : {&bank.jumpers, &bank.cables})
        runs->erase(std::remove_if(
                        runs->begin(), runs->end(),
                        [&](Run const& run) { return terminals.count(run.from) == 0 || terminals.count(run.to) == 0; }),
                    runs->end());
    return bank;
}

} // namespace internal::inspection

BANKWRIGHT_INLINE Inspection inspect(std::string_view text, CheckOptions const& rules, ReadLimits const& limits,
                                     PartListSource const& part_lists) {
    refuse_unknown_rules(rules.only);
    refuse_unknown_rules(rules.skip);
    auto read = bankwright::read(text, limits, part_lists);
    Inspection seen;
    seen.text = text;
    seen.findings = std::move(read.findings);
    seen.readable = read.readable;
    seen.as_written = read.readable && count(seen.findings).error == 0;
    if (read.readable) {
        bool const whole = read.left_out.empty();
        auto options = rules;
        options.whole = whole;
        auto checked = check(whole ? read.bank : internal::inspection::without_stray_conductors(read.bank), options);
        if (whole) seen.arrangement = std::move(checked.arrangement);
        seen.left_out_rules = std::move(checked.left_out);
        for (auto& finding : checked.findings)
            if (whole || internal::inspection::holds_whatever_is_missing(finding))
                seen.findings.push_back(std::move(finding));
    }
    locate(seen.findings, read.map);
    order(seen.findings);
    seen.bank = std::move(read.bank);
    seen.map = std::move(read.map);
    seen.left_out = std::move(read.left_out);
    seen.part_lists = std::move(read.part_lists);
    return seen;
}

} // namespace bankwright
