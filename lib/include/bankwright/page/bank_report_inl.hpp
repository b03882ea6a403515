// Body of bank_report.hpp.
#pragma once

#include "bankwright/findings/rule_id.hpp"
#include "bankwright/page/bank_report.hpp"
#include "bankwright/wiring/arrangement.hpp"

#include <algorithm>
#include <utility>

namespace bankwright::page {

namespace internal {

inline std::vector<std::vector<std::string>> strings_of(Bank const& bank) {
    auto const graph = wiring_graph(bank);
    auto const arranged = arrangement(graph, graph.edges, judge(graph, graph.edges));
    std::vector<std::vector<std::string>> strings;
    for (auto const& string : arranged.strings) {
        auto& ids = strings.emplace_back();
        for (auto const edge : string)
            ids.push_back(graph.id(graph.edges[static_cast<std::size_t>(edge)]));
    }
    return strings;
}

// From half throttle on: below it a run soon takes days.
inline std::vector<ThrottledRun> at_throttles(Bank const& bank, Moment moment) {
    std::vector<ThrottledRun> runs;
    bool const any = std::any_of(bank.motors.begin(), bank.motors.end(), [](Motor const& motor) {
        return motor.control.value_or(SpeedControl::pulse_width) == SpeedControl::pulse_width;
    });
    if (!any || moment.loads != LoadsAre::as_described) return runs;
    for (int percent = 50; percent <= 100; percent += 10) {
        moment.throttle = Throttle::percent(percent);
        DischargeOptions asked;
        asked.moment = moment;
        asked.samples_apart = 0.1; // only the end is asked for
        auto const run = discharge(bank, asked);
        if (run.end == RunEnd::nothing_drawn) return {};
        runs.push_back({*moment.throttle, run.runtime, run.end != RunEnd::time});
    }
    return runs;
}

inline void charge(BankReport& report, Bank const& bank, Verdict const& verdict, std::size_t parts) {
    if (bank.chargers.empty()) return;
    if (parts > most_parts) {
        report.no_charge = "left out for a bank of so many parts; the `recharge` command works it out";
    } else if (count(verdict.findings).error > 0) {
        report.no_charge = "not worked out: correct the errors above first";
    } else if (auto missing = missing_for_recharge(bank)) {
        report.no_charge = "not worked out: " + *missing;
    } else {
        RechargeOptions empty;
        empty.charge = StateOfCharge::of(0.0);
        report.charge_from_empty = recharge(bank, empty);
        report.charge_as_described = recharge(bank);
    }
}

inline LoggedHookup judged(Bank const& bank, Verdict const& verdict, ReportOptions const& options) {
    auto const& [file, log, changed] = *options.log;
    LoggedHookup logged{head_of(verdict), bank, hookup_options(log, options.hookup), file, log, {}, {}, {}, changed};
    HookupJudge const judge(bank, logged.options);
    logged.sheet = judge.sheet();
    logged.questions = judge.questions();
    logged.judged = judge.judge(log.entries);
    return logged;
}

} // namespace internal

BANKWRIGHT_INLINE bool wiring_is_wrong(Verdict const& verdict) {
    return std::any_of(verdict.findings.begin(), verdict.findings.end(), [](Finding const& finding) {
        return finding.level == Level::error && !finding.accepted && family(finding.rule) == "wiring";
    });
}

BANKWRIGHT_INLINE BankReport report_on(Bank bank, Verdict verdict, std::vector<RuleInfo const*> rules,
                                       ReportOptions options) {
    BankReport report;
    report.point = operating_point(bank, {.moment = options.moment});
    if (verdict.arrangement) report.strings = internal::strings_of(bank);
    std::size_t parts = 0;
    for_each_part(bank, [&](PartKind, auto const&) { ++parts; });
    if (parts <= most_parts) report.shorts = short_circuit(bank);

    if (parts > most_parts) {
        report.no_run = "left out for a bank of so many parts; the `discharge` command works it out";
    } else if (wiring_is_wrong(verdict)) {
        report.no_run = "not worked out: correct the wiring first";
    } else if (auto missing = missing_for_discharge(bank)) {
        report.no_run = "not worked out: " + *missing;
    } else {
        DischargeOptions asked;
        asked.moment = options.moment;
        report.run = discharge(bank, asked);
        report.run_range = run_range(bank, asked);
        if (parts <= most_parts_of_hookup) report.at_throttles = internal::at_throttles(bank, options.moment);
    }
    internal::charge(report, bank, verdict, parts);
    // An error that somebody accepted with a reason stands in nobody's way unless it is a short.
    if (count(verdict.findings).error > 0)
        report.no_hookup = "no hook-up yet: correct the errors above first";
    else if (parts > most_parts_of_hookup)
        report.no_hookup = "left out for a bank of so many parts; the `hookup` command works it out";
    else if (auto const unfit = unfit_for_hookup(bank))
        report.no_hookup = "no hook-up: " + *unfit;
    else
        report.hookup = hookup(bank, options.hookup);
    if (report.hookup && options.log) report.logged = internal::judged(bank, verdict, options);

    report.bank = std::move(bank);
    report.verdict = std::move(verdict);
    report.rules = std::move(rules);
    report.options = std::move(options);
    return report;
}

} // namespace bankwright::page
