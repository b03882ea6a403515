// Bodies of telling_reading.hpp.
#pragma once

#include "bankwright/analyses/trace/reading_likelihood.hpp"
#include "bankwright/analyses/trace/telling_reading.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace bankwright {

namespace internal::telling {

inline constexpr double least_bits = 0.02;         // below it a reading is not worth the walk
inline constexpr double worth_under_load = 0.7;    // readings at rest are easier to take
inline constexpr std::size_t looked_at_twice = 40; // candidates

inline double error_of(TraceOptions const& options, double volts) {
    return meter_error(options.meter, std::abs(volts) * si::volt).value() / std::sqrt(3.0);
}

struct Seen {
    double volts = 0.0;    // [V]
    double variance = 0.0; // [V2] with the meter's error
};

inline std::vector<Seen> see(View const& view, std::size_t hypotheses, int red, int black,
                             TraceOptions const& options) {
    std::vector<Seen> seen;
    for (std::size_t h = 0; h < hypotheses; ++h) {
        auto const outlook = view.outlooks[h].of(red, black);
        double const error = error_of(options, outlook.volts);
        seen.push_back({outlook.volts, outlook.spread * outlook.spread + error * error});
    }
    return seen;
}

// Entropy of the groups [bits], less what is left of it when voltages are told apart by whole classes of two standard
// deviations. Quick, and wrong at the borders of the classes.
inline double quick_bits(std::vector<Seen> const& seen, std::vector<double> const& chances,
                         std::vector<std::size_t> const& groups) {
    std::map<long, std::map<std::size_t, double>> classes;
    double narrowest = seen.front().variance;
    for (auto const& one : seen)
        narrowest = std::min(narrowest, one.variance);
    double const width = 2.0 * std::sqrt(narrowest);
    std::map<std::size_t, double> before;
    for (std::size_t h = 0; h < seen.size(); ++h) {
        classes[std::lround(seen[h].volts / width)][groups[h]] += chances[h];
        before[groups[h]] += chances[h];
    }
    auto const entropy = [](std::map<std::size_t, double> const& shares, double whole) {
        double sum = 0.0;
        for (auto const& [group, share] : shares)
            if (share > 0.0) sum -= share * std::log2(share / whole);
        return sum;
    };
    double whole = 0.0;
    for (double chance : chances)
        whole += chance;
    double bits = entropy(before, whole);
    for (auto const& [place, shares] : classes) {
        double within = 0.0;
        for (auto const& [group, share] : shares)
            within += share;
        bits -= entropy(shares, within);
    }
    return bits / whole;
}

// The same with the overlap of every two normal distributions: a lower bound of the mutual information.
inline double bits(std::vector<Seen> const& seen, std::vector<double> const& chances,
                   std::vector<std::size_t> const& groups) {
    double whole = 0.0, sum = 0.0;
    for (double chance : chances)
        whole += chance;
    for (std::size_t h = 0; h < seen.size(); ++h) {
        double all = 0.0, own = 0.0;
        for (std::size_t k = 0; k < seen.size(); ++k) {
            double const variance = seen[h].variance + seen[k].variance, apart = seen[h].volts - seen[k].volts;
            double const overlap = std::exp(-0.5 * apart * apart / variance) *
                                   std::sqrt(2.0 * std::sqrt(seen[h].variance * seen[k].variance) / variance);
            all += chances[k] * overlap;
            if (groups[k] == groups[h]) own += chances[k] * overlap;
        }
        sum += chances[h] * std::log2(own / all);
    }
    double before = 0.0;
    std::map<std::size_t, double> shares;
    for (std::size_t h = 0; h < seen.size(); ++h)
        shares[groups[h]] += chances[h];
    for (auto const& [group, share] : shares)
        if (share > 0.0) before -= share * std::log2(share / whole);
    return (before + sum) / whole;
}

} // namespace internal::telling

BANKWRIGHT_INLINE bool can_tell(std::vector<View> const& views, std::size_t one, std::size_t other,
                                TraceOptions const& options) {
    for (auto const& view : views) {
        auto const &a = view.outlooks[one], &b = view.outlooks[other];
        int const terminals = a.terminals();
        for (int red = 0; red < terminals; ++red)
            for (int black = red + 1; black < terminals; ++black) {
                double const volts = a.volts(red, black), apart = (volts - b.volts(red, black)) / options.told_apart;
                double const error = internal::telling::error_of(options, volts);
                if (apart * apart <= error * error) continue; // whatever the spreads are
                double const x = a.of(red, black).spread, y = b.of(red, black).spread;
                if (apart * apart > x * x + y * y + error * error) return true;
            }
    }
    return false;
}

BANKWRIGHT_INLINE std::optional<TellingReading> most_telling(std::vector<View> const& views,
                                                             std::vector<double> const& chances,
                                                             std::vector<std::size_t> const& groups,
                                                             TraceOptions const& options) {
    std::vector<TellingReading> candidates;
    auto const by_bits = [](auto const& a, auto const& b) {
        return but_for_rounding(a.bits) > but_for_rounding(b.bits);
    };
    auto const worth = [&](std::size_t view) {
        return views[view].moment.loads == LoadsAre::at_rest ? 1.0 : internal::telling::worth_under_load;
    };
    for (std::size_t v = 0; v < views.size(); ++v) {
        int const terminals = views[v].outlooks.empty() ? 0 : views[v].outlooks.front().terminals();
        for (int black = 0; black < terminals; ++black)
            for (int red = black + 1; red < terminals; ++red) {
                auto const seen = internal::telling::see(views[v], chances.size(), red, black, options);
                candidates.push_back({v, red, black, worth(v) * internal::telling::quick_bits(seen, chances, groups)});
            }
    }
    std::stable_sort(candidates.begin(), candidates.end(), by_bits);
    if (candidates.size() > internal::telling::looked_at_twice) candidates.resize(internal::telling::looked_at_twice);
    for (auto& one : candidates)
        one.bits = worth(one.view) * internal::telling::bits(internal::telling::see(views[one.view], chances.size(),
                                                                                    one.red, one.black, options),
                                                             chances, groups);
    std::stable_sort(candidates.begin(), candidates.end(), by_bits);
    if (candidates.empty() || candidates.front().bits < internal::telling::least_bits) return std::nullopt;
    auto told = candidates.front();
    auto const& likeliest = views[told.view].outlooks.front();
    if (likeliest.of(told.red, told.black).volts < 0.0)
        std::swap(told.red, told.black); // a meter is read with its sign
    return told;
}

} // namespace bankwright
