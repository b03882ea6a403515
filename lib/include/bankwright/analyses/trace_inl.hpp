// Bodies of trace.hpp.
#pragma once

#include "bankwright/analyses/trace.hpp"
#include "bankwright/analyses/trace/reading_likelihood.hpp"
#include "bankwright/analyses/trace/suspect_chances.hpp"
#include "bankwright/analyses/trace/suspects.hpp"
#include "bankwright/analyses/trace/telling_reading.hpp"
#include "bankwright/analyses/trace/voltage_outlook.hpp"
#include "bankwright/bank/terminals.hpp"
#include "bankwright/network/build.hpp"
#include "bankwright/network/option_limits.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <map>
#include <set>
#include <stdexcept>
#include <string>
#include <utility>

#include <fmt/format.h>

namespace bankwright {

namespace internal::tracing {

// A limit of error that no side of is likelier than another: its standard deviation (GUM, JCGM 100:2008, 4.3.7).
inline double deviation(double limit) { return limit / std::sqrt(3.0); }

inline double volts_error(MeterAccuracy const& meter, double volts) {
    return deviation(meter_error(meter, std::abs(volts) * si::volt).value());
}
inline double amps_error(ClampAccuracy const& clamp, double amperes) {
    return deviation(clamp.of_reading * std::abs(amperes) + clamp.counts * clamp.digit.value());
}

// One suspect after the readings.
struct Weighed {
    double weight = 0.0; // logarithm of the posterior, not normalized
    double robust = 0.0;
    double misfit = 0.0;
};

// One hypothesis after the readings: the suspect that stands for it, and between which values it most likely lies.
struct Ranked {
    std::size_t best = 0;
    double probability = 0.0;
    double low = 0.0;
    double high = 0.0;
};

inline constexpr double worth_showing = 1e-3; // probability
inline constexpr std::size_t most_kept = 250; // hypotheses that are looked at closely
inline constexpr std::size_t most_asked = 60; // hypotheses that the next reading is to tell apart
inline constexpr double much_current = 5.0;   // [A] with every load off: no equalizing of a sound bank comes near it

// Pairs included. What one of them costs grows with the parts and with the terminals.
inline std::size_t most_suspects(Network const& network) {
    return std::min<std::size_t>(120'000, 500'000'000 / (network.parts.size() * network.terminals.size() + 1));
}

inline constexpr std::size_t most_seeds_there = 6;

inline constexpr std::size_t most_single_faults = 40'000; // some seventy batteries with all that joins them

// How many there are to look at, nearly: every end of every conductor on every terminal.
inline std::size_t single_fault_count(Bank const& bank) {
    return 2 * (bank.jumpers.size() + bank.cables.size()) * terminals_of(bank).size();
}

} // namespace internal::tracing

BANKWRIGHT_INLINE std::optional<std::string> unfit_for_trace(Bank const& bank) {
    if (bank.batteries.empty()) return "it has no battery";
    auto const faults = internal::tracing::single_fault_count(bank);
    if (faults > internal::tracing::most_single_faults)
        return fmt::format("{} places where a conductor could be landed wrong; {} at most are looked at", faults,
                           internal::tracing::most_single_faults);
    return std::nullopt;
}

namespace internal::tracing {
inline void refuse_unfit(TakenReading const& reading) {
    bankwright::refuse_unfit(reading.moment);
    if (auto const* const volts = std::get_if<VoltsRead>(&reading.what))
        refuse_if(shown_volts_problem(volts->reads), volts->red + " against " + volts->black, volts->reads);
    else if (auto const* const amps = std::get_if<AmpsRead>(&reading.what))
        refuse_if(shown_amperes_problem(amps->reads), amps->part, amps->reads);
}

inline void refuse_unfit_meter(double of_reading, int counts) {
    auto const share = Spread::of(of_reading);
    refuse_if(of_reading_problem(share), "of_reading", share);
    refuse_if(digits_problem(counts), "digits", std::to_string(counts));
}

inline void refuse_unfit(TraceOptions const& options) {
    refuse_unfit_meter(options.meter.of_reading, options.meter.counts);
    refuse_if(digit_problem(options.meter.digit), "resolution", options.meter.digit);
    refuse_unfit_meter(options.clamp.of_reading, options.clamp.counts);
    refuse_if(digit_problem(options.clamp.digit), "resolution of the clamp", options.clamp.digit);
    refuse_unless(options.spread.emf >= 0.0 && options.spread.emf <= 0.9, "spread of emf", options.spread.emf,
                  "0 to 0.9");
    refuse_unless(options.spread.resistance >= 0.0 && options.spread.resistance <= 0.9, "spread of resistance",
                  options.spread.resistance, "0 to 0.9");
    refuse_unless(options.explained > 0.0, "explained", options.explained, "above 0");
    refuse_unless(options.told_apart > 0.0, "told_apart", options.told_apart, "above 0");
    refuse_unless(options.certain > 0.0 && options.certain <= 1.0, "certain", options.certain, "above 0, to 1");
}

inline Bank const& fit(Bank const& bank, TraceOptions const& options) {
    refuse_unfit(options);
    if (auto const unfit = unfit_for_trace(bank)) throw std::invalid_argument("no trace: " + *unfit);
    return bank;
}
} // namespace internal::tracing

class FaultTracer::Search {
public:
    Search(Bank const& bank, TraceOptions const& options)
        : options_(options), suspects_(internal::tracing::fit(bank, options), options.spread) {}

    TraceResult trace(std::vector<TakenReading> const& readings) {
        for (auto const& reading : readings)
            internal::tracing::refuse_unfit(reading);
        take(readings);
        weigh(0);
        if (misfit_of_likeliest() > options_.explained && add_pairs()) weigh(weighed_.size());
        auto ranked = rank();
        TraceResult result;
        if (!readings.empty()) result.explained = misfit_of_likeliest() <= options_.explained;
        result.current_at_rest = has_current_at_rest(ranked);
        auto const views = look_closely(ranked, moments_for_next(result.current_at_rest));
        auto const leaders = group(ranked, views, result);
        if (!result.diagnoses.empty() && result.diagnoses.front().probability < options_.certain)
            result.next = ask(ranked, views, leaders);
        return result;
    }

private:
    // Values and errors of the readings, what they ask for, and which of the wiring they are of.
    void take(std::vector<TakenReading> const& readings) {
        readings_ = readings;
        values_.clear();
        errors_.clear();
        asked_.clear();
        for (std::size_t r = 0; r < readings_.size(); ++r) {
            AskedReading asked;
            if (auto const* volts = std::get_if<VoltsRead>(&readings_[r].what)) {
                asked.red = terminal(volts->red);
                asked.black = terminal(volts->black);
                values_.push_back(volts->reads.value());
                errors_.push_back(internal::tracing::volts_error(options_.meter, volts->reads.value()));
            } else {
                auto const& amps = std::get<AmpsRead>(readings_[r].what);
                asked.element = element_of(amps.part);
                values_.push_back(amps.reads.value());
                errors_.push_back(internal::tracing::amps_error(options_.clamp, amps.reads.value()));
            }
            auto known = std::find_if(asked_.begin(), asked_.end(), [&](AskedThen const& then) {
                return internal::suspecting::same(then.moment, readings_[r].moment);
            });
            if (known == asked_.end()) known = asked_.insert(known, {readings_[r].moment, {}, {}});
            known->readings.push_back(asked);
            known->numbers.push_back(r);
        }
    }

    int terminal(std::string const& name) const {
        auto const& nodes = suspects_.network().nodes;
        auto const found = nodes.find(name);
        if (found == nodes.end())
            throw std::invalid_argument("a reading names `" + name + "`, which the bank does not have");
        return found->second;
    }

    // The first element of a part; throws if there is no such part.
    std::size_t element_of(std::string const& id) const {
        std::size_t first = 0;
        for (auto const& part : suspects_.network().parts) {
            if (part.id == id) return first;
            first += part.elements.size();
        }
        throw std::invalid_argument("a reading names the part `" + id + "`, which the bank does not have");
    }

    ReadingLikelihood likelihood_of(std::size_t suspect) {
        std::vector<ExpectedReading> expected(readings_.size());
        for (auto const& then : asked_) {
            auto of_moment = suspects_.readings(suspect, then.moment, then.readings);
            for (std::size_t r = 0; r < of_moment.size(); ++r)
                expected[then.numbers[r]] = std::move(of_moment[r]);
        }
        return ReadingLikelihood(std::move(expected), values_, errors_);
    }

    void weigh(std::size_t begin) {
        auto const& all = suspects_.all();
        weighed_.resize(begin);
        for (std::size_t s = begin; s < all.size(); ++s) {
            auto const likelihood = likelihood_of(s);
            weighed_.push_back(
                {std::log(all[s].weight) + likelihood.logarithm(), likelihood.robust(), likelihood.misfit()});
        }
    }

    double misfit_of_likeliest() const {
        return std::max_element(weighed_.begin(), weighed_.end(),
                                [](auto const& a, auto const& b) { return a.weight < b.weight; })
            ->misfit;
    }

    // What alone comes nearest, with every other fault; the nearest first, for as many as there is time.
    bool add_pairs() {
        auto const before = suspects_.all().size();
        std::vector<std::size_t> order;
        for (std::size_t s = 1; s < before; ++s)
            if (suspects_.all()[s].faults.size() == 1) order.push_back(s);
        std::stable_sort(order.begin(), order.end(), [&](auto a, auto b) {
            return but_for_rounding(weighed_[a].robust) > but_for_rounding(weighed_[b].robust);
        });
        std::vector<std::size_t> seeds;
        std::set<std::size_t> taken;
        std::map<std::size_t, std::size_t> of_element; // many places for one end are much the same
        for (auto s : order) {
            auto const change = suspects_.all()[s].faults.front().first;
            auto& seeds_there = of_element[suspects_.changes()[change].element];
            if (seeds.size() >= options_.pair_seeds || seeds_there >= internal::tracing::most_seeds_there) continue;
            if (!taken.insert(change).second) continue;
            ++seeds_there;
            seeds.push_back(s);
        }
        auto const most = internal::tracing::most_suspects(suspects_.network());
        for (auto partner : order)
            for (auto seed : seeds)
                if (suspects_.all().size() < most) suspects_.add_pair(seed, partner);
        return suspects_.all().size() > before;
    }

    // Who stands for a hypothesis of many values: the median, where nothing is known yet as good a guess as any; the
    // likeliest where the values are of two faults, or the median is none of the likely ones.
    internal::tracing::Ranked stand_in(std::vector<std::pair<std::size_t, double>> const& suspects) const {
        auto const best = std::max_element(suspects.begin(), suspects.end(),
                                           [](auto const& a, auto const& b) { return a.second < b.second; });
        internal::tracing::Ranked one{best->first, 0.0, 0.0, 0.0};
        for (auto const& [suspect, weight] : suspects)
            one.probability += weight;
        auto const& faults = suspects_.all()[best->first].faults;
        if (faults.size() != 1) return one;
        auto const at_share = [&](double share) {
            double reached = 0.0;
            for (auto const& of_value : suspects)
                if ((reached += of_value.second) >= share * one.probability) return of_value;
            return suspects.back();
        };
        auto const value_of = [&](auto const& of_value) {
            return suspects_.all()[of_value.first].faults.front().second;
        };
        one.low = value_of(at_share(0.05));
        one.high = value_of(at_share(0.95));
        auto const median = at_share(0.5);
        if (median.second > 0.1 * best->second) one.best = median.first;
        return one;
    }

    // In words; what is between two values with both of them.
    std::vector<Fault> words_of(internal::tracing::Ranked const& ranked) const {
        return suspects_.describe(suspects_.all()[ranked.best], ranked.low, ranked.high);
    }

    // Hypotheses, the likeliest first, without those that are not worth a look.
    std::vector<internal::tracing::Ranked> rank() const {
        auto const& all = suspects_.all();
        double most = weighed_.front().weight;
        for (auto const& one : weighed_)
            most = std::max(most, one.weight);
        std::map<std::size_t, std::vector<std::pair<std::size_t, double>>> by_hypothesis; // suspects and weights
        double sum = 0.0;
        for (std::size_t s = 0; s < all.size(); ++s) {
            double const weight = std::exp(weighed_[s].weight - most);
            by_hypothesis[all[s].hypothesis].emplace_back(s, weight);
            sum += weight;
        }
        std::vector<internal::tracing::Ranked> ranked;
        for (auto const& [hypothesis, suspects] : by_hypothesis) {
            auto one = stand_in(suspects);
            one.probability /= sum;
            if (one.probability >= 1e-5) ranked.push_back(one);
        }
        // What the readings cannot tell apart stands in the order of the parts: rounding decides nothing.
        std::stable_sort(ranked.begin(), ranked.end(), [](auto const& a, auto const& b) {
            return but_for_rounding(a.probability) > but_for_rounding(b.probability);
        });
        if (ranked.size() > internal::tracing::most_kept) ranked.resize(internal::tracing::most_kept);
        return ranked;
    }

    bool has_current_at_rest(std::vector<internal::tracing::Ranked> const& ranked) {
        for (auto const& one : ranked)
            if (one.probability > 0.01 &&
                suspects_.expected(one.best, internal::suspecting::at_rest()).largest_battery_amps() >
                    internal::tracing::much_current)
                return true;
        return false;
    }

    // When the next reading could be taken: as those at hand, at rest, and with the load on where nothing speaks
    // against.
    std::vector<Moment> moments_for_next(bool current_at_rest) const {
        std::vector<Moment> moments{internal::suspecting::at_rest()};
        auto const add = [&](Moment const& moment) {
            for (auto const& known : moments)
                if (internal::suspecting::same(known, moment)) return;
            moments.push_back(moment);
        };
        for (auto const& reading : readings_)
            add(reading.moment);
        auto const& bank = suspects_.bank();
        if (!current_at_rest && !(bank.motors.empty() && bank.loads.empty())) add(Moment{});
        return moments;
    }

    std::vector<View> look_closely(std::vector<internal::tracing::Ranked> const& ranked,
                                   std::vector<Moment> const& moments) {
        std::vector<View> views;
        std::vector<ReadingLikelihood> likelihoods;
        for (auto const& one : ranked)
            likelihoods.push_back(likelihood_of(one.best));
        for (auto const& moment : moments) {
            views.push_back({moment, {}});
            for (std::size_t r = 0; r < ranked.size(); ++r)
                views.back().outlooks.emplace_back(suspects_.expected(ranked[r].best, moment), likelihoods[r],
                                                   suspects_.network().terminals.size());
        }
        return views;
    }

    // Fills the diagnoses; by ranked hypothesis, the number of its group.
    std::vector<std::size_t> group(std::vector<internal::tracing::Ranked> const& ranked, std::vector<View> const& views,
                                   TraceResult& result) const {
        auto const none = static_cast<std::size_t>(-1);
        std::vector<std::size_t> group_of(ranked.size(), none), leaders;
        for (std::size_t r = 0; r < ranked.size(); ++r) {
            if (group_of[r] != none) continue;
            Diagnosis diagnosis;
            diagnosis.faults = words_of(ranked[r]);
            diagnosis.misfit = weighed_[ranked[r].best].misfit;
            diagnosis.probability = ranked[r].probability;
            group_of[r] = leaders.size();
            leaders.push_back(r);
            for (std::size_t other = r + 1; other < ranked.size(); ++other) {
                if (group_of[other] != none || can_tell(views, r, other, options_)) continue;
                group_of[other] = group_of[r];
                diagnosis.probability += ranked[other].probability;
                diagnosis.alike.push_back(words_of(ranked[other]));
            }
            result.diagnoses.push_back(std::move(diagnosis));
        }
        std::stable_sort(result.diagnoses.begin(), result.diagnoses.end(), [](auto const& a, auto const& b) {
            return but_for_rounding(a.probability) > but_for_rounding(b.probability);
        });
        while (result.diagnoses.size() > 1 && result.diagnoses.back().probability < internal::tracing::worth_showing)
            result.diagnoses.pop_back();
        return group_of;
    }

    std::optional<NextReading> ask(std::vector<internal::tracing::Ranked> const& ranked, std::vector<View> const& views,
                                   std::vector<std::size_t> const& groups) const {
        std::vector<double> chances;
        for (std::size_t r = 0; r < std::min(ranked.size(), internal::tracing::most_asked); ++r)
            chances.push_back(ranked[r].probability);
        auto const told = most_telling(views, chances, groups, options_);
        if (!told) return std::nullopt;
        auto const& names = suspects_.network().terminals;
        NextReading next;
        next.red = names[static_cast<std::size_t>(told->red)];
        next.black = names[static_cast<std::size_t>(told->black)];
        next.moment = views[told->view].moment;
        next.bits = told->bits;
        std::vector<bool> shown(ranked.size(), false);
        for (std::size_t r = 0; r < ranked.size() && next.expected.size() < 6; ++r) {
            if (shown[groups[r]]) continue;
            shown[groups[r]] = true;
            auto const outlook = views[told->view].outlooks[r].of(told->red, told->black);
            double const spread =
                std::hypot(outlook.spread, internal::tracing::volts_error(options_.meter, outlook.volts));
            next.expected.push_back({words_of(ranked[r]), outlook.volts * si::volt, spread * si::volt});
        }
        return next;
    }

    TraceOptions options_;
    Suspects suspects_;
    std::vector<TakenReading> readings_;
    std::vector<double> values_, errors_; // [V] or [A], by reading
    struct AskedThen {
        Moment moment;
        std::vector<AskedReading> readings;
        std::vector<std::size_t> numbers; // of those among all
    };
    std::vector<AskedThen> asked_;
    std::vector<internal::tracing::Weighed> weighed_; // by suspect
};

BANKWRIGHT_INLINE FaultTracer::FaultTracer(Bank const& bank, TraceOptions const& options)
    : search_(std::make_unique<Search>(bank, options)) {}
BANKWRIGHT_INLINE FaultTracer::~FaultTracer() = default;
BANKWRIGHT_INLINE TraceResult FaultTracer::trace(std::vector<TakenReading> const& readings) {
    return search_->trace(readings);
}

BANKWRIGHT_INLINE std::vector<TakenReading> readings_of(ReadingSheet const& sheet) {
    auto const moment_of = [](ReadingState const& state) {
        auto moment = internal::suspecting::at_rest();
        if (state.current) {
            moment.loads = LoadsAre::constant_current;
            moment.current = *state.current;
        } else if (state.throttle) {
            moment.loads = LoadsAre::as_described;
            moment.throttle = state.throttle;
        } else if (state.rest && !*state.rest) {
            moment.loads = LoadsAre::as_described;
        }
        return moment;
    };
    std::vector<TakenReading> readings;
    for (auto const& taken : sheet.volts)
        readings.push_back({VoltsRead{taken.red, taken.black, taken.reads}, moment_of(taken.state)});
    for (auto const& taken : sheet.amps)
        readings.push_back({AmpsRead{taken.part, taken.reads}, moment_of(taken.state)});
    return readings;
}

BANKWRIGHT_INLINE TraceResult trace(Bank const& bank, std::vector<TakenReading> const& readings,
                                    TraceOptions const& options) {
    return FaultTracer(bank, options).trace(readings);
}

} // namespace bankwright
