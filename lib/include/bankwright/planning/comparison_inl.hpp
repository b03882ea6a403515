#pragma once

#include "bankwright/analyses/discharge.hpp"
#include "bankwright/analyses/operating_point.hpp"
#include "bankwright/analyses/short_circuit.hpp"
#include "bankwright/planning/comparison.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace bankwright {
namespace internal::comparing {

inline bool wiring_is_right(Findings const& findings) {
    return std::none_of(findings.begin(), findings.end(), [](Finding const& finding) {
        return finding.level == Level::error && finding.rule.rfind("wiring/", 0) == 0;
    });
}

inline void add_currents(BankFigures& figures, Bank const& bank) {
    auto const point = operating_point(bank);
    if (point.status != solver::Status::solved) return;
    double sum = 0.0; // [A]
    for (auto const& reading : point.parts) {
        bool const is_load = reading.kind == PartKind::motor || reading.kind == PartKind::load;
        if (is_load && std::isfinite(reading.voltage.value())) // none behind an open breaker
            figures.loads.emplace_back(reading.id, reading.voltage);
        if (reading.kind != PartKind::battery) continue;
        sum += reading.current.value();
        if (figures.hardest_current && reading.current <= *figures.hardest_current) continue;
        figures.hardest = reading.id;
        figures.hardest_current = reading.current;
    }
    if (sum > 0.0) figures.share = figures.hardest_current->value() * static_cast<double>(bank.batteries.size()) / sum;
}

inline void add_copper(BankFigures& figures, Bank const& bank) {
    for (auto const* runs : {&bank.jumpers, &bank.cables})
        for (auto const& run : *runs) {
            auto const& conductor = run.conductor;
            if (!conductor.size || !conductor.length) continue;
            auto const same = std::find_if(figures.copper.begin(), figures.copper.end(),
                                           [&](CopperOfSize const& one) { return one.size == *conductor.size; });
            if (same == figures.copper.end())
                figures.copper.push_back({*conductor.size, *conductor.length});
            else
                same->length += *conductor.length;
        }
    std::stable_sort(figures.copper.begin(), figures.copper.end(),
                     [](CopperOfSize const& a, CopperOfSize const& b) { return b.size.area() < a.size.area(); });
}

} // namespace internal::comparing

BANKWRIGHT_INLINE BankFigures figures_of(std::string name, Bank const& bank, CheckResult const& checked) {
    using namespace internal::comparing;
    BankFigures figures;
    figures.name = std::move(name);
    figures.arrangement = checked.arrangement;
    figures.findings = checked.findings;
    figures.cuts = cut_list(bank);
    add_copper(figures, bank);
    if (!wiring_is_right(checked.findings)) return figures;
    add_currents(figures, bank);
    for (auto const& place : short_circuit(bank).places)
        if (!figures.largest_short || place.prospective > *figures.largest_short)
            figures.largest_short = place.prospective;
    if (missing_for_discharge(bank) || !figures.hardest_current) return figures;
    DischargeOptions options;
    options.keep_samples = false;
    auto const run = discharge(bank, options);
    if (run.end == RunEnd::nothing_drawn || run.end == RunEnd::time) return figures;
    figures.runtime = run.runtime;
    figures.to_reserve = run.to_reserve;
    return figures;
}

} // namespace bankwright
