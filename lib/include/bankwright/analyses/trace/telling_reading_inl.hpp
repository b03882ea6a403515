// Bodies of telling_reading.hpp.
#pragma once

#include "bankwright/analyses/trace/reading_likelihood.hpp"
#include "bankwright/analyses/trace/telling_reading.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>
#include <vector>

namespace bankwright {

namespace internal::telling {

inline constexpr double least_bits = 0.02;         // below it a reading is not worth the walk
inline constexpr double worth_under_load = 1.15;   // it tells how bad a joint is, too, whatever it is
inline constexpr double worth_idle = 0.99;         // where the load is on and takes nothing: it might as well be off
inline constexpr std::size_t looked_at_twice = 40; // candidates

inline constexpr double little_bits = 0.25;      // below it a lead may be lengthened
inline constexpr double worth_far = 0.3;         // and the walk is worth so much less
inline constexpr double worth_of_current = 0.95; // of two that tell the same the voltage is the easier

inline double error_of(TraceOptions const& options, double volts) {
    return meter_error(options.meter, std::abs(volts) * si::volt).value() / std::sqrt(3.0);
}
inline double clamp_error_of(TraceOptions const& options, double amperes) {
    auto const& clamp = options.clamp;
    return (clamp.of_reading * std::abs(amperes) + clamp.counts * clamp.digit.value()) / std::sqrt(3.0);
}

struct Seen { // by a hypothesis
    double chance = 0.0;
    double volts = 0.0;    // [V], or [A] of a current
    double variance = 0.0; // its square, with the meter's error
};

inline std::vector<Seen> see(View const& view, std::vector<Candidate> const& hypotheses, TellingReading const& reading,
                             TraceOptions const& options) {
    std::vector<Seen> seen;
    for (auto const& [number, chance] : hypotheses) {
        if (reading.current) {
            auto const& outlook = view.currents[number][*reading.current];
            double const error = clamp_error_of(options, outlook.amperes);
            seen.push_back({chance, outlook.amperes, outlook.spread * outlook.spread + error * error});
        } else {
            auto const outlook = view.outlooks[number].of(reading.red, reading.black);
            double const error = error_of(options, outlook.volts);
            seen.push_back({chance, outlook.volts, outlook.spread * outlook.spread + error * error});
        }
    }
    return seen;
}

inline double entropy(std::vector<double> const& shares, double whole) { // [bits], times the whole
    double sum = 0.0;
    for (double share : shares)
        if (share > 0.0) sum -= share * std::log2(share / whole);
    return sum;
}

// Entropy of the hypotheses [bits], less what is left of it when voltages are told apart by whole classes of two
// standard deviations. Quick, and wrong at the borders of the classes.
inline double quick_bits(std::vector<Seen> const& seen) {
    double narrowest = seen.front().variance, whole = 0.0;
    for (auto const& one : seen) {
        narrowest = std::min(narrowest, one.variance);
        whole += one.chance;
    }
    double const width = 2.0 * std::sqrt(narrowest);
    std::vector<std::pair<long, double>> classes;
    std::vector<double> shares;
    for (auto const& one : seen) {
        classes.emplace_back(std::lround(one.volts / width), one.chance);
        shares.push_back(one.chance);
    }
    // What is told is the entropy of the classes: every hypothesis is in one of them.
    std::sort(classes.begin(), classes.end());
    std::vector<double> sums;
    for (std::size_t c = 0; c < classes.size(); ++c) {
        if (c == 0 || classes[c].first != classes[c - 1].first) sums.push_back(0.0);
        sums.back() += classes[c].second;
    }
    return entropy(sums, whole) / whole;
}

// The same with the overlap of every two normal distributions: a lower bound of the mutual information.
inline double bits(std::vector<Seen> const& seen) {
    double whole = 0.0, sum = 0.0;
    std::vector<double> shares;
    for (auto const& one : seen) {
        whole += one.chance;
        shares.push_back(one.chance);
    }
    for (auto const& one : seen) {
        double all = 0.0;
        for (auto const& other : seen) {
            double const variance = one.variance + other.variance, apart = one.volts - other.volts;
            double const overlap = std::exp(-0.5 * apart * apart / variance) *
                                   std::sqrt(2.0 * std::sqrt(one.variance * other.variance) / variance);
            all += other.chance * overlap;
        }
        sum += one.chance * std::log2(one.chance / all);
    }
    return (entropy(shares, whole) + sum) / whole;
}

// Of two that hang together alike no pair of terminals reads further apart than the two terminals that differ most.
inline bool are_one(VoltageOutlooks const& a, VoltageOutlooks const& b, double least, double told_apart) {
    if (!a.solved() || !b.solved() || a.islands() != b.islands()) return false;
    auto const &x = a.island_volts(), &y = b.island_volts();
    std::vector<std::pair<double, double>> reach; // by island: the least and the most
    for (std::size_t t = 0; t < x.size(); ++t) {
        auto const island = static_cast<std::size_t>(a.islands()[t]);
        while (reach.size() <= island)
            reach.emplace_back(std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity());
        reach[island].first = std::min(reach[island].first, x[t] - y[t]);
        reach[island].second = std::max(reach[island].second, x[t] - y[t]);
        if (reach[island].second - reach[island].first > told_apart * least) return false;
    }
    return true;
}

inline std::vector<TellingReading> candidates_of(std::vector<View> const& views, Reach const& reach, bool far) {
    std::vector<TellingReading> candidates;
    auto const& place_of = *reach.place_of;
    for (std::size_t v = 0; v < views.size(); ++v) {
        int const terminals = views[v].outlooks.empty() ? 0 : views[v].outlooks.front().terminals();
        for (int black = 0; black < terminals; ++black)
            for (int red = black + 1; red < terminals; ++red)
                if (far == (place_of[static_cast<std::size_t>(red)] != place_of[static_cast<std::size_t>(black)]))
                    candidates.push_back({v, red, black, {}, far, 0.0});
        if (far || views[v].currents.empty()) continue;
        for (std::size_t part = 0; part < reach.clampable; ++part)
            candidates.push_back({v, 0, 0, part, false, 0.0});
    }
    return candidates;
}

// Does a load that is on change any voltage, by more hypotheses than not? Behind an open breaker it does nothing.
inline bool changes_much(View const& at_rest, View const& view, std::vector<Candidate> const& hypotheses) {
    constexpr double seen_at_once = 0.05; // [V]
    double changed = 0.0, all = 0.0;
    for (auto const& [number, chance] : hypotheses) {
        auto const &a = at_rest.outlooks[number].island_volts(), &b = view.outlooks[number].island_volts();
        double most = 0.0;
        for (std::size_t t = 0; t < a.size(); ++t)
            most = std::max(most, std::abs(a[t] - b[t]));
        all += chance;
        changed += most > seen_at_once ? chance : 0.0;
    }
    return changed > 0.5 * all;
}

inline std::optional<TellingReading> most_telling_of(std::vector<View> const& views,
                                                     std::vector<Candidate> const& hypotheses, Reach const& reach,
                                                     bool far, TraceOptions const& options) {
    auto const by_bits = [](auto const& a, auto const& b) {
        return but_for_rounding(a.bits) > but_for_rounding(b.bits);
    };
    auto const seen = [&](TellingReading const& one) { return see(views[one.view], hypotheses, one, options); };
    auto candidates = candidates_of(views, reach, far);
    candidates.erase(std::remove_if(candidates.begin(), candidates.end(), reach.is_taken), candidates.end());
    std::vector<double> worth; // by view
    for (auto const& view : views)
        worth.push_back(changes_much(views.front(), view, hypotheses) ? worth_under_load : worth_idle);
    worth.front() = 1.0; // at rest
    auto const rate = [&](auto const& measure) {
        for (auto& one : candidates)
            one.bits = worth[one.view] * (one.current ? worth_of_current : 1.0) * measure(seen(one));
        std::stable_sort(candidates.begin(), candidates.end(), by_bits);
    };
    rate(quick_bits);
    if (candidates.size() > looked_at_twice) candidates.resize(looked_at_twice);
    rate(bits);
    if (candidates.empty() || candidates.front().bits < least_bits) return std::nullopt;
    return candidates.front();
}

} // namespace internal::telling

BANKWRIGHT_INLINE bool can_tell(std::vector<View> const& views, std::size_t one, std::size_t other,
                                TraceOptions const& options) {
    double const least = internal::telling::error_of(options, 0.0); // of the meter, wherever its leads are
    for (auto const& view : views) {
        for (std::size_t part = 0; !view.currents.empty() && part < view.currents[one].size(); ++part) {
            auto const &a = view.currents[one][part], &b = view.currents[other][part];
            double const apart = std::abs(a.amperes - b.amperes) / options.told_apart;
            if (apart > std::hypot(a.spread, b.spread, internal::telling::clamp_error_of(options, a.amperes)))
                return true;
        }
        auto const &a = view.outlooks[one], &b = view.outlooks[other];
        if (internal::telling::are_one(a, b, least, options.told_apart)) continue;
        int const terminals = a.terminals();
        for (int red = 0; red < terminals; ++red)
            for (int black = red + 1; black < terminals; ++black) {
                double const volts = a.volts(red, black), apart = (volts - b.volts(red, black)) / options.told_apart;
                if (apart * apart <= least * least) continue;
                double const error = internal::telling::error_of(options, volts);
                if (apart * apart <= error * error) continue; // whatever the spreads are
                double const x = a.of(red, black).spread, y = b.of(red, black).spread;
                if (apart * apart > x * x + y * y + error * error) return true;
            }
    }
    return false;
}

BANKWRIGHT_INLINE std::optional<TellingReading> most_telling(std::vector<View> const& views,
                                                             std::vector<Candidate> const& hypotheses,
                                                             Reach const& reach, TraceOptions const& options) {
    auto told = internal::telling::most_telling_of(views, hypotheses, reach, false, options);
    if (!told || told->bits < internal::telling::little_bits)
        if (auto const far = internal::telling::most_telling_of(views, hypotheses, reach, true, options))
            if (!told || internal::telling::worth_far * far->bits > told->bits) told = far;
    if (!told || told->current) return told;
    double mean = 0.0; // a meter is read with its sign: with the one that most expect
    for (auto const& one : hypotheses)
        mean += one.chance * views[told->view].outlooks[one.number].volts(told->red, told->black);
    if (mean < 0.0) std::swap(told->red, told->black);
    return told;
}

} // namespace bankwright
