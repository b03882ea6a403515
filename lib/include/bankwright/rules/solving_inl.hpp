#pragma once

#include "bankwright/rules/solving.hpp"
#include "bankwright/units/print.hpp"

#include <string>
#include <utility>

#include <fmt/format.h>

namespace bankwright {

BANKWRIGHT_INLINE void say_unsolved(Bank const& bank, OperatingPoint const& point, Findings& findings) {
    if (point.status == solver::Status::solved) return;
    constexpr auto rule = rule_named(solving_rules, "solve/no-solution");
    auto watts = 0.0; // [W] that the loads ask for
    std::vector<std::string> parts;
    for (auto const& load : bank.loads) {
        if (!load.power) continue;
        watts += load.power->value();
        parts.push_back(load.id);
    }
    for (auto const& motor : bank.motors)
        parts.push_back(motor.id);
    for (auto const& load : bank.loads)
        if (!load.power) parts.push_back(load.id);
    auto message = fmt::format("there is no operating point ({})", name(point.status));
    auto finding = finding_of(rule, std::move(message), std::string(rule.fix));
    if (point.reachable_share && watts > 0.0) {
        auto const most = *point.reachable_share * watts;
        finding.message = fmt::format("the loads ask for {} of constant power, the bank can supply {} at most",
                                      print(watts * si::watt), print(most * si::watt));
        measured(finding, watts, most, "W");
    }
    finding.parts = std::move(parts);
    findings.push_back(std::move(finding));
}

// Behind a wrong wiring it would be a consequence of it.
BANKWRIGHT_INLINE void check_solving(Seen const& seen, Findings& findings) {
    if (seen.verdict().right()) say_unsolved(seen.bank(), seen.working(), findings);
}

} // namespace bankwright
