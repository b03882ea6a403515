#pragma once

#include "bankwright/analyses/operating_point.hpp"
#include "bankwright/planning/plan.hpp"
#include "bankwright/planning/search/candidates.hpp"
#include "bankwright/planning/search/fitting.hpp"
#include "bankwright/planning/search/reasons.hpp"
#include "bankwright/rules/seen.hpp"

#include <algorithm>
#include <stdexcept>
#include <utility>

#include <fmt/format.h>

namespace bankwright {
namespace internal::planning {

// Of the battery that works hardest, at full throttle.
inline Current hardest(Bank const& bank) {
    OperatingPointOptions options;
    options.moment.everything_closed = true;
    options.moment.throttle = Throttle::of(1.0);
    auto const point = operating_point(bank, options);
    Current most{};
    for (auto const& battery : bank.batteries)
        if (auto const* reading = reading_if_any(point, battery.id)) most = std::max(most, reading->current);
    return most;
}

inline PlannedBank planned(Wish const& wish, PartStock const& stock, Candidate const& candidate, Fitted fitted) {
    PlannedBank out;
    out.choices = Reasons(wish, stock, candidate, fitted).tell();
    out.bank = std::move(fitted.bank);
    out.notes = std::move(fitted.notes);
    out.arrangement = fmt::format("{}S{}P", candidate.series, candidate.strings);
    out.model = candidate.battery.id;
    out.battery = words_for(candidate.battery);
    out.series = candidate.series;
    out.strings = candidate.strings;
    out.to_reserve = run_to_reserve(out.bank);
    out.reserve = out.bank.system.reserve.value_or(usual_reserve(*candidate.battery.chemistry));
    out.each = hardest(out.bank);
    out.cuts = cut_list(out.bank);
    return out;
}

} // namespace internal::planning

BANKWRIGHT_INLINE PlanResult plan(Wish const& wish, PartStock const& stock, PlanOptions const& options) {
    using namespace internal::planning;
    if (options.alternatives < 1) throw std::invalid_argument("at least one bank is asked for");
    PlanResult result;
    CandidateSearch search(wish, stock);
    auto const candidates = search.run();
    if (candidates.empty()) {
        result.problems = {search.why_none()};
        return result;
    }
    for (auto const& candidate : candidates) {
        if (static_cast<int>(result.banks.size()) == options.alternatives) break;
        Fitting fitting(wish, stock, candidate);
        if (auto fitted = fitting.run())
            result.banks.push_back(planned(wish, stock, candidate, std::move(*fitted)));
        else if (result.problems.empty())
            result.problems = {fitting.problem()};
    }
    if (!result.banks.empty()) result.problems.clear();
    return result;
}

} // namespace bankwright
