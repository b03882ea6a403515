// Bodies of trace.hpp.
#pragma once

#include "bankwright/analyses/trace.hpp"
#include "bankwright/analyses/trace/believed_readings.hpp"
#include "bankwright/analyses/trace/reading_likelihood.hpp"
#include "bankwright/analyses/trace/suspect_chances.hpp"
#include "bankwright/analyses/trace/suspects.hpp"
#include "bankwright/analyses/trace/telling_reading.hpp"
#include "bankwright/analyses/trace/unfit_options.hpp"
#include "bankwright/analyses/trace/voltage_outlook.hpp"
#include "bankwright/bank/terminals.hpp"
#include "bankwright/network/build.hpp"
#include "bankwright/network/option_limits.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <map>
#include <numeric>
#include <set>
#include <stdexcept>
#include <string>
#include <utility>

#include <fmt/format.h>

namespace bankwright {

namespace internal::tracing {

// One suspect after the readings.
struct Weighed {
    double weight = 0.0; // logarithm of the posterior, not normalized
    double robust = 0.0;
    double misfit = 0.0;
    bool is_bound = false; // its weight is at most this: not looked at, as it lies far below the likeliest
};

// One hypothesis after the readings: the suspect that stands for it, and between which values it most likely lies.
struct Ranked {
    std::size_t best = 0;
    double probability = 0.0;
    double low = 0.0;
    double high = 0.0;
};

inline constexpr double worth_showing = 1e-3; // probability
inline constexpr double far_below = 40.0;     // logarithms of a weight: 1e-17
inline constexpr std::size_t most_kept = 400; // hypotheses that are looked at closely
inline constexpr std::size_t most_asked = 60; // groups that the next reading is to tell apart
inline constexpr double much_current = 5.0;   // [A] with every load off, above what flows in the bank as described

// Pairs included, for a tenth of a second: one that must be solved afresh, as where a load follows its voltage, costs
// some ten times an update.
inline std::size_t most_suspects(Network const& network, bool is_updated) {
    return std::min<std::size_t>(is_updated ? 17'000 : 4'000,
                                 500'000'000 / (network.parts.size() * network.terminals.size() + 1));
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
inline Bank const& fit(Bank const& bank, TraceOptions const& options) {
    refuse_unfit(options);
    if (auto const unfit = unfit_for_trace(bank)) throw std::invalid_argument("no trace: " + *unfit);
    return bank;
}
} // namespace internal::tracing

class FaultTracer::Search {
public:
    Search(Bank const& bank, TraceOptions const& options)
        : options_(options), suspects_(internal::tracing::fit(bank, options), options.spread, options.since),
          readings_(suspects_, options_) {
        if (options_.clamp_at_hand) find_clampable();
    }

    TraceResult trace(std::vector<TakenReading> const& readings) {
        for (auto const& reading : readings)
            internal::tracing::refuse_unfit(reading);
        forget(readings);
        readings_.take(readings);
        weigh();
        if (readings_.any_unrested() && drives_current(likeliest())) { // what is charged reads more than it rests at
            readings_.believe_unrested();
            weigh();
        }
        if (misfit_of_likeliest() > options_.explained) {
            if (doubt_slip(std::nullopt))
                weigh();
            else if (add_pairs())
                weigh_from(weighed_.size());
        }
        if (is_unlikely(likeliest()) && doubt_slip(weighed_[likeliest()].weight)) weigh();
        auto ranked = rank();
        TraceResult result;
        result.explained =
            readings_.is_empty() ? !readings_.any_impossible() : misfit_of_likeliest() <= options_.explained;
        result.doubtful = readings_.doubtful();
        result.current_at_rest = has_current_at_rest(ranked);
        auto const views = look_closely(ranked, moments_for_next(result.current_at_rest || is_miswired(ranked)));
        auto const leaders = group(ranked, views, result);
        result.next = ask_again(ranked, views, leaders);
        if (!result.next && !result.diagnoses.empty() && result.diagnoses.front().probability < options_.certain)
            result.next = ask(ranked, views, leaders);
        return result;
    }

    // For the readings under load that will follow, once, with the first call.
    void prepare() {
        auto const& bank = suspects_.bank();
        if (std::exchange(is_prepared_, true) || (bank.motors.empty() && bank.loads.empty())) return;
        for (std::size_t s = 0; s < suspects_.singles(); ++s)
            if (!weighed_[s].is_bound) suspects_.prepare(s, Moment{});
    }

private:
    // Pairs, what was solved for readings that are no more, and what is too much to keep.
    void forget(std::vector<TakenReading> const& readings) {
        suspects_.forget_pairs();
        if (weighed_.size() > suspects_.singles()) weighed_.resize(suspects_.singles());
        std::vector<Moment> moments{internal::suspecting::at_rest(), Moment{}};
        for (auto const& reading : readings)
            moments.push_back(reading.moment);
        suspects_.forget_but(moments);
    }

    void weigh_one(std::size_t s) {
        auto const likelihood = readings_.likelihood_of(s);
        weighed_[s] = {std::log(suspects_.all()[s].weight) + likelihood.logarithm(), likelihood.robust(),
                       likelihood.misfit()};
    }
    void weigh_from(std::size_t begin) {
        weighed_.resize(suspects_.all().size());
        for (std::size_t s = begin; s < weighed_.size(); ++s)
            weigh_one(s);
    }

    // A reading more makes a suspect likelier by no more than where the meter shows what it expects, and that is as
    // sure as the meter: 1 / error. Who lies far below the likeliest even so is not looked at.
    void weigh() {
        auto now = readings_.weights();
        bool const goes_on = weighed_.size() == suspects_.all().size() && weights_.size() <= now.size() &&
                             std::equal(weights_.begin(), weights_.end(), now.begin());
        auto const before = goes_on ? weights_.size() : 0;
        weights_ = std::move(now);
        if (before == 0) return weigh_from(0);
        if (before == weights_.size()) return;
        double most_gained = 0.0;
        for (auto r = before; r < weights_.size(); ++r)
            most_gained -= std::log(weights_[r].error);
        std::vector<std::size_t> order(weighed_.size());
        std::iota(order.begin(), order.end(), std::size_t{0});
        std::stable_sort(order.begin(), order.end(),
                         [&](auto a, auto b) { return weighed_[a].weight > weighed_[b].weight; });
        double likeliest = -std::numeric_limits<double>::infinity();
        for (auto const s : order) {
            weighed_[s].weight += most_gained;
            weighed_[s].is_bound = true;
            if (weighed_[s].weight < likeliest - internal::tracing::far_below) continue;
            weigh_one(s);
            likeliest = std::max(likeliest, weighed_[s].weight);
        }
    }
    void weigh_all() {
        for (std::size_t s = 0; s < weighed_.size(); ++s)
            if (weighed_[s].is_bound) weigh_one(s);
    }

    // A slip of who read is likelier than what has run being miswired.
    bool is_unlikely(std::size_t suspect) const {
        auto const& faults = suspects_.all()[suspect].faults;
        return std::any_of(faults.begin(), faults.end(), [&](auto const& fault) {
            return internal::suspecting::chance_since(options_.since, suspects_.changes()[fault.first].kind) <
                   internal::doubting::chance_of_slip;
        });
    }
    bool doubt_slip(std::optional<double> least) {
        weigh_all();
        return readings_.doubt_slip([&](std::size_t s) { return weighed_[s].robust; }, least);
    }

    std::size_t likeliest() const {
        return static_cast<std::size_t>(
            std::max_element(weighed_.begin(), weighed_.end(),
                             [](auto const& a, auto const& b) { return a.weight < b.weight; }) -
            weighed_.begin());
    }
    double misfit_of_likeliest() const { return weighed_[likeliest()].misfit; }

    bool drives_current(std::size_t suspect) {
        auto const flowing = [&](std::size_t s) {
            return suspects_.expected(s, internal::suspecting::at_rest()).largest_battery_amps();
        };
        return flowing(suspect) > internal::tracing::much_current + flowing(0);
    }

    // What alone comes nearest, with every other fault; the nearest first, for as many as there is time.
    bool add_pairs() {
        weigh_all();
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
            if (!shows(suspects_.changes()[change])) continue;
            auto& seeds_there = of_element[suspects_.changes()[change].element];
            if (seeds.size() >= options_.pair_seeds || seeds_there >= internal::tracing::most_seeds_there) continue;
            if (!taken.insert(change).second) continue;
            ++seeds_there;
            seeds.push_back(s);
        }
        auto const most = before + internal::tracing::most_suspects(suspects_.network(), !readings_.any_under_load());
        for (auto partner : order) {
            if (!shows(suspects_.changes()[suspects_.all()[partner].faults.front().first])) continue;
            for (auto seed : seeds)
                if (suspects_.all().size() < most) suspects_.add_pair(seed, partner);
        }
        return suspects_.all().size() > before;
    }

    // A load that is off, and a battery that gives nothing, show no fault of what they take and of their resistance.
    bool shows(FaultChange const& change) const {
        auto const kind = suspects_.network().parts[change.part].kind;
        bool const needs_current =
            change.is_multiple || change.kind == FaultKind::stalled ||
            (change.kind == FaultKind::open && (kind == PartKind::motor || kind == PartKind::load));
        return !needs_current || readings_.any_under_load();
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
            if (weighed_[s].is_bound) continue;
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
        double left = 0.0; // below what is worth showing, all together
        while (ranked.size() > 1 && left + ranked.back().probability < internal::tracing::worth_showing) {
            left += ranked.back().probability;
            ranked.pop_back();
        }
        if (ranked.size() > internal::tracing::most_kept) ranked.resize(internal::tracing::most_kept);
        return ranked;
    }

    bool has_current_at_rest(std::vector<internal::tracing::Ranked> const& ranked) {
        for (auto const& one : ranked)
            if (one.probability > 0.01 && drives_current(one.best)) return true;
        return false;
    }

    // Rather than not: then no load is put on it.
    bool is_miswired(std::vector<internal::tracing::Ranked> const& ranked) const {
        double chance = 0.0;
        for (auto const& one : ranked)
            for (auto const& [change, value] : suspects_.all()[one.best].faults)
                if (internal::suspecting::is_of_a_hand(suspects_.changes()[change].kind)) {
                    chance += one.probability;
                    break;
                }
        return chance > 0.5;
    }

    // When the next reading could be taken: as those at hand, at rest, and with the load on where nothing speaks
    // against; the first of all at rest.
    std::vector<Moment> moments_for_next(bool rather_not_on) const {
        auto rest = internal::suspecting::at_rest();
        rest.converters = suspects_.bank().converters.empty();
        std::vector<Moment> moments{rest};
        auto const add = [&](Moment const& moment) {
            for (auto const& known : moments)
                if (internal::suspecting::same(known, moment)) return;
            moments.push_back(moment);
        };
        for (auto const& reading : readings_.all())
            add(reading.moment);
        auto const& bank = suspects_.bank();
        if (!readings_.all().empty() && !rather_not_on && !(bank.motors.empty() && bank.loads.empty())) add(Moment{});
        return moments;
    }

    std::vector<View> look_closely(std::vector<internal::tracing::Ranked> const& ranked,
                                   std::vector<Moment> const& moments) {
        std::vector<View> views;
        std::vector<ReadingLikelihood> likelihoods;
        for (auto const& one : ranked)
            likelihoods.push_back(readings_.likelihood_of(one.best));
        for (auto const& moment : moments) {
            views.push_back({moment, {}, {}});
            for (std::size_t r = 0; r < ranked.size(); ++r) {
                auto& expected = suspects_.expected(ranked[r].best, moment);
                views.back().outlooks.emplace_back(expected, likelihoods[r], suspects_.network().terminals.size());
                if (clampable_.empty()) continue;
                views.back().currents.emplace_back();
                for (auto const& [part, element] : clampable_)
                    views.back().currents.back().push_back(current_outlook(expected, likelihoods[r], element));
            }
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
        std::vector<Candidate> hypotheses; // one for each group
        for (std::size_t r = 0; r < ranked.size(); ++r) {
            if (groups[r] == hypotheses.size()) hypotheses.push_back({r, 0.0});
            hypotheses[groups[r]].chance += ranked[r].probability;
        }
        std::stable_sort(hypotheses.begin(), hypotheses.end(), [](auto const& a, auto const& b) {
            return but_for_rounding(a.chance) > but_for_rounding(b.chance);
        });
        if (hypotheses.size() > internal::tracing::most_asked) hypotheses.resize(internal::tracing::most_asked);
        auto const told =
            most_telling(views, hypotheses,
                         {&suspects_.places().of, clampable_.size(),
                          [&](TellingReading const& one) { return is_taken(views[one.view].moment, one); }},
                         options_);
        if (!told) return std::nullopt;
        return asked_there(*told, ranked, views, groups);
    }

    // What was read once tells nothing the second time.
    bool is_taken(Moment const& moment, TellingReading const& one) const {
        auto const& names = suspects_.network().terminals;
        auto const is = [&](std::string const& name, int terminal) {
            return name == names[static_cast<std::size_t>(terminal)];
        };
        return std::any_of(readings_.all().begin(), readings_.all().end(), [&](TakenReading const& taken) {
            if (!internal::suspecting::same(taken.moment, moment)) return false;
            if (auto const* amps = std::get_if<AmpsRead>(&taken.what))
                return one.current && clampable_[*one.current].first == amps->part;
            auto const& volts = std::get<VoltsRead>(taken.what);
            return !one.current && ((is(volts.red, one.red) && is(volts.black, one.black)) ||
                                    (is(volts.red, one.black) && is(volts.black, one.red)));
        });
    }

    // A doubted reading that was not taken again.
    std::optional<NextReading> ask_again(std::vector<internal::tracing::Ranked> const& ranked,
                                         std::vector<View> const& views, std::vector<std::size_t> const& groups) const {
        for (auto const& doubt : readings_.doubtful()) {
            if (readings_.is_taken_again(doubt.reading)) continue;
            auto const& taken = readings_.all()[doubt.reading];
            TellingReading there;
            while (!internal::suspecting::same(views[there.view].moment, taken.moment))
                ++there.view;
            NextReading next;
            if (auto const* volts = std::get_if<VoltsRead>(&taken.what)) {
                there.red = node_of(suspects_.network(), volts->red);
                there.black = node_of(suspects_.network(), volts->black);
                next = asked_there(there, ranked, views, groups);
            } else {
                next.part = std::get<AmpsRead>(taken.what).part;
                next.moment = taken.moment;
            }
            next.again = true;
            return next;
        }
        return std::nullopt;
    }

    NextReading asked_there(TellingReading const& told, std::vector<internal::tracing::Ranked> const& ranked,
                            std::vector<View> const& views, std::vector<std::size_t> const& groups) const {
        auto const& names = suspects_.network().terminals;
        auto const& places = suspects_.places();
        auto const& view = views[told.view];
        NextReading next;
        next.moment = view.moment;
        next.bits = told.bits;
        if (told.current) {
            next.part = clampable_[*told.current].first;
        } else {
            next.red = names[static_cast<std::size_t>(told.red)];
            next.black = names[static_cast<std::size_t>(told.black)];
            for (int const lead : {told.red, told.black})
                if (auto const& place =
                        places.names[static_cast<std::size_t>(places.of[static_cast<std::size_t>(lead)])];
                    next.places.empty() || next.places.front() != place)
                    next.places.push_back(place);
        }
        std::vector<bool> shown(ranked.size(), false);
        for (std::size_t r = 0; r < ranked.size() && next.expected.size() < 6; ++r) {
            if (shown[groups[r]]) continue;
            shown[groups[r]] = true;
            NextReading::Expected expected{words_of(ranked[r]), {}, {}, {}, {}};
            if (told.current) {
                auto const outlook = view.currents[r][*told.current];
                auto const error = internal::tracing::amps_error(options_.clamp, outlook.amperes);
                expected.flows = outlook.amperes * si::ampere;
                expected.flows_spread = std::hypot(outlook.spread, error) * si::ampere;
            } else {
                auto const outlook = view.outlooks[r].of(told.red, told.black);
                auto const error = internal::tracing::volts_error(options_.meter, outlook.volts);
                expected.reads = outlook.volts * si::volt;
                expected.spread = std::hypot(outlook.spread, error) * si::volt;
            }
            next.expected.push_back(std::move(expected));
        }
        return next;
    }

    // Conductors first: a clamp goes around them.
    void find_clampable() {
        for (bool const conductors : {true, false}) {
            std::size_t element = 0;
            for (auto const& part : suspects_.network().parts) {
                bool const is_conductor = part.kind == PartKind::jumper || part.kind == PartKind::cable;
                if (is_conductor == conductors && part.kind != PartKind::busbar && !part.elements.empty())
                    clampable_.emplace_back(part.id, element);
                element += part.elements.size();
            }
        }
    }

    TraceOptions options_;
    Suspects suspects_;
    internal::tracing::BelievedReadings readings_;
    std::vector<std::pair<std::string, std::size_t>> clampable_; // parts with an element of each
    bool is_prepared_ = false;
    std::vector<internal::tracing::Weighed> weighed_;                  // by suspect
    std::vector<internal::tracing::BelievedReadings::Weight> weights_; // the readings that they were weighed with
};

BANKWRIGHT_INLINE FaultTracer::FaultTracer(Bank const& bank, TraceOptions const& options)
    : search_(std::make_unique<Search>(bank, options)) {}
BANKWRIGHT_INLINE FaultTracer::~FaultTracer() = default;
BANKWRIGHT_INLINE TraceResult FaultTracer::trace(std::vector<TakenReading> const& readings) {
    auto result = search_->trace(readings);
    search_->prepare();
    return result;
}

BANKWRIGHT_INLINE TraceResult FaultTracer::once(Bank const& bank, std::vector<TakenReading> const& readings,
                                                TraceOptions const& options) {
    return Search(bank, options).trace(readings);
}

BANKWRIGHT_INLINE TraceOptions trace_options(ReadingSheet const& sheet) {
    TraceOptions options;
    options.meter = sheet.meter;
    options.clamp = sheet.clamp;
    options.clamp_at_hand = sheet.has_clamp;
    options.since = sheet.since;
    return options;
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
    return FaultTracer::once(bank, readings, options);
}

} // namespace bankwright
