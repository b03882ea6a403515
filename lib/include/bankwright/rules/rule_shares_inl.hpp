#pragma once

#include "bankwright/analyses/discharge.hpp"
#include "bankwright/network/option_limits.hpp"
#include "bankwright/rules/check.hpp"
#include "bankwright/rules/rule_shares.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

namespace bankwright {
namespace internal::shares {

inline bool counts(Finding const& finding) { return finding.level != Level::note && !finding.accepted; }

// Rules that compare labels find in a sample what they find in the bank as stated: labels do not vary.
inline bool compares_labels(Finding const& finding) { return finding.rule == "matching/mixed-capacity"; }

template <class Key>
std::vector<Key> most_frequent_first(std::map<Key, std::size_t> const& counted) {
    std::vector<std::pair<std::size_t, Key>> all;
    for (auto const& [key, count] : counted)
        all.emplace_back(count, key);
    std::stable_sort(all.begin(), all.end(), [](auto const& a, auto const& b) { return a.first > b.first; });
    std::vector<Key> keys;
    for (auto& [count, key] : all)
        keys.push_back(std::move(key));
    return keys;
}

} // namespace internal::shares

BANKWRIGHT_INLINE std::size_t usual_checks(Bank const& bank) {
    auto const parts = static_cast<double>(part_count(bank));
    auto const motors = static_cast<double>(bank.motors.size());
    double const cost = 500.0 * parts * parts + 3500.0 * motors * motors * motors; // [ns] roughly, a check and a run
    return static_cast<std::size_t>(std::clamp(5e8 / cost, 1.0, 200.0));
}

BANKWRIGHT_INLINE SampleShares rule_shares(Bank const& bank, RuleShareOptions const& options) {
    using namespace internal::shares;
    refuse_unfit(options.spreads);
    refuse_unfit_samples(options.samples, 0, option_limits::most_checked_samples);
    SampleShares result;
    result.samples = options.samples;
    std::map<std::string, RuleShare> rules;
    std::map<std::string, std::map<std::string, std::size_t>> parts; // by rule
    std::map<std::string, std::size_t> ended_by;
    DischargeOptions run_options;
    run_options.tolerance = 1e-6;    // far below the spread
    run_options.samples_apart = 0.1; // only the end is asked for
    bool const runs = !missing_for_discharge(bank);
    if (runs) {
        auto const as_stated = discharge(bank, run_options).runtime;
        result.run_time = RunTimes{as_stated, {}, as_stated, as_stated, {}};
    }
    double seconds = 0.0;
    for (std::size_t number = 0; number < options.samples; ++number) {
        auto const drawn = sample_bank(bank, options.spreads, options.seed, number);
        std::set<std::string> fired;
        for (auto const& finding : check(drawn).findings) {
            if (!counts(finding) || compares_labels(finding)) continue;
            auto& share = rules[finding.rule];
            share.rule = finding.rule;
            share.level = std::max(share.level, finding.level);
            if (!finding.parts.empty()) ++parts[finding.rule][finding.parts.front()];
            if (fired.insert(finding.rule).second) ++share.samples;
        }
        if (runs) {
            auto const run = discharge(drawn, run_options);
            seconds += run.runtime.value();
            result.run_time->least = std::min(result.run_time->least, run.runtime);
            result.run_time->most = std::max(result.run_time->most, run.runtime);
            if (!run.ended_by.empty()) ++ended_by[run.ended_by];
        }
        if (options.on_draw) options.on_draw(number + 1);
    }
    if (runs && options.samples > 0)
        result.run_time->mean = seconds / static_cast<double>(options.samples) * si::second;
    if (runs) result.run_time->ended_by = most_frequent_first(ended_by);
    for (auto const& finding : check(bank).findings)
        if (counts(finding)) {
            auto& share = rules[finding.rule];
            share.rule = finding.rule;
            share.level = std::max(share.level, finding.level);
            share.as_stated = true;
            if (compares_labels(finding)) share.samples = options.samples;
        }
    for (auto& [rule, share] : rules) {
        if (auto const named = most_frequent_first(parts[rule]); !named.empty()) share.part = named.front();
        result.rules.push_back(share);
    }
    std::stable_sort(result.rules.begin(), result.rules.end(),
                     [](RuleShare const& a, RuleShare const& b) { return a.samples > b.samples; });
    return result;
}

} // namespace bankwright
