// Bodies of mistake_search.hpp.
#pragma once

#include "bankwright/analyses/hookup/last_devices.hpp"
#include "bankwright/analyses/hookup/mistake_search.hpp"
#include "bankwright/graph/as_index.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <string>
#include <utility>

namespace bankwright {

namespace internal::mistake_search {

inline constexpr double slip = 1e-3;               // chance that a reading is none of the bank's
inline constexpr double slip_span = 100.0;         // [V] over which it may then be
inline constexpr double named = 0.97;              // probability at which nothing more is asked
inline constexpr std::size_t most_looked_at = 150; // suspects that the next reading is to tell apart
inline constexpr double least_bits = 0.02;
inline constexpr double worth_saying = 1e-4;   // of the likeliest that reads the same
inline constexpr double worth_a_reading = 0.5; // bits, where one part is at fault whatever it is: the eye is faster

} // namespace internal::mistake_search

class MistakeSearch::Weighing {
public:
    Weighing(MistakeSearch const& search, std::vector<Evidence> const& evidence,
             std::vector<SuspectedMistake> const& suspects)
        : search_(search), evidence_(evidence), suspects_(suspects), stands_(suspects.size()), battery_volts_(1.0) {
        for (std::size_t b = 0; b < search.partial_.batteries(); ++b)
            battery_volts_ = std::max(battery_volts_, std::abs(search.partial_.emf(b)));
    }

    MistakeFound find() {
        weigh();
        auto const ranked = rank();
        MistakeFound found;
        auto const probes = candidates();
        auto const views = view(ranked, probes);
        auto const group_of = group(ranked, probes.size(), views, found);
        bool const is_named = std::any_of(found.chances.begin(), found.chances.end(), [](auto const& chance) {
            return chance.probability >= internal::mistake_search::named;
        });
        if (!is_named) found.next = most_telling(ranked, probes, views, group_of, found.chances.size());
        if (found.next && found.next->bits < internal::mistake_search::worth_a_reading && one_part(ranked))
            found.next.reset();
        sort(found);
        return found;
    }

private:
    struct Ranked {
        std::size_t suspect;
        double probability;
    };
    struct View { // of one suspect at one pair of terminals
        double volts = 0.0, spread = 0.0;
        double low = 0.0, high = 0.0; // whether the loads that are off conduct or not
        bool floats = false;
    };

    // A meter whose leads have no path between them shows about 0 V.
    static double shown(std::optional<double> const& volts) { return volts.value_or(0.0); }

    // One standard deviation [V]: the meter's limit is taken as that of an even spread; the emfs add by squares.
    double spread(std::optional<double> const& volts, SuspectedMistake const& suspect) const {
        double const meter = search_.meter_.error(shown(volts)) / std::sqrt(3.0) + 1e-3;
        if (!volts) return meter;
        double emf = 0.0;
        for (double const one : search_.emf_spread_)
            emf = std::max(emf, one);
        double const batteries =
            std::min(static_cast<double>(search_.emf_spread_.size()), std::max(2.0, std::abs(*volts) / battery_volts_));
        return std::hypot(meter, std::sqrt(batteries) * emf, suspect.spread);
    }

    struct Stand {
        Made made;
        Potentials open, loaded;
    };
    Stand const& stand(std::size_t suspect, Made const& made) {
        auto& known = stands_[suspect];
        for (auto const& one : known)
            if (one.made == made) return one;
        auto deviation = suspects_[suspect].deviation;
        Stand one{made, search_.partial_.read(made, deviation), {}};
        deviation.leaks = search_.loads_;
        one.loaded = search_.partial_.read(made, deviation);
        known.push_back(std::move(one));
        return known.back();
    }

    // Where the probes are: at a gap, where the ends are about to be landed.
    int probe(std::size_t suspect, Evidence const& read, int node) const {
        if (read.pending < 0) return node;
        auto const& deviation = suspects_[suspect].deviation;
        auto const& connection = search_.partial_.connections()[as_index(read.pending)];
        if (connection.kind != PartKind::jumper && connection.kind != PartKind::cable) return node;
        auto const& path = connection.paths.front();
        auto const is_end = [&](int probed) { return probed == path.from || probed == path.to; };
        if (!is_end(read.red) || !is_end(read.black)) return node;
        if (deviation.connection == read.pending && deviation.from_end == (node == path.from)) return deviation.onto;
        return PartialBank::landed(node, deviation);
    }

    bool joined(std::size_t suspect, Evidence const& read) const {
        auto const& deviation = suspects_[suspect].deviation;
        auto clips = read.clips;
        for (auto const c : read.in_hand)
            for (auto const& path : search_.partial_.connections()[as_index(c)].paths)
                if (deviation.absent != c) clips.emplace_back(path.from, path.to);
        auto const copper = search_.partial_.copper(read.made, deviation, clips);
        return copper[as_index(read.red)] == copper[as_index(read.black)];
    }

    double log_likelihood(std::size_t suspect, Evidence const& read) {
        using namespace internal::mistake_search;
        if (read.is_ohms) return std::log(joined(suspect, read) == (read.reads > 0.5) ? 1.0 - slip : slip);
        auto const& now = stand(suspect, read.made);
        int const red = probe(suspect, read, read.red), black = probe(suspect, read, read.black);
        auto const density = [&](std::optional<double> const& volts) {
            double const sigma = spread(volts, suspects_[suspect]);
            double const off = (read.reads - shown(volts)) / sigma;
            return std::exp(-0.5 * off * off) / (sigma * std::sqrt(2.0 * 3.14159265358979323846));
        };
        double const open = density(now.open.between(red, black)), loaded = density(now.loaded.between(red, black));
        return std::log((1.0 - slip) * std::max(open, loaded) + slip / slip_span);
    }

    // What the wrong reading rules out need not be asked about those before it.
    void weigh() {
        using namespace internal::mistake_search;
        constexpr double out_of_question = 25.0; // nats
        logs_.assign(suspects_.size(), 0.0);
        auto const& last = evidence_.back().made;
        for (bool const of_last : {true, false}) {
            double const most = of_last ? 0.0 : *std::max_element(logs_.begin(), logs_.end());
            for (std::size_t s = 0; s < suspects_.size(); ++s) {
                if (of_last)
                    logs_[s] = std::log(suspects_[s].weight);
                else if (logs_[s] < most - out_of_question)
                    continue;
                for (auto const& read : evidence_)
                    if ((read.made == last) == of_last) logs_[s] += log_likelihood(s, read);
            }
        }
    }

    std::vector<Ranked> rank() const {
        double const most = *std::max_element(logs_.begin(), logs_.end());
        std::vector<Ranked> ranked;
        double sum = 0.0;
        for (std::size_t s = 0; s < suspects_.size(); ++s) {
            double const weight = std::exp(logs_[s] - most);
            sum += weight;
            if (weight > 1e-6) ranked.push_back({s, weight});
        }
        for (auto& one : ranked)
            one.probability /= sum;
        std::stable_sort(ranked.begin(), ranked.end(),
                         [](auto const& a, auto const& b) { return a.probability > b.probability * (1.0 + 1e-9); });
        if (ranked.size() > internal::mistake_search::most_looked_at)
            ranked.resize(internal::mistake_search::most_looked_at);
        return ranked;
    }

    // Whatever it is, it is with this part.
    bool one_part(std::vector<Ranked> const& ranked) const {
        std::map<std::string, double> of_part;
        for (auto const& one : ranked)
            if (auto const& mistake = suspects_[one.suspect].mistake; mistake && !mistake->part.empty())
                of_part[mistake->part] += one.probability;
        return std::any_of(of_part.begin(), of_part.end(),
                           [](auto const& part) { return part.second >= internal::mistake_search::named; });
    }

    // Pairs of terminals in one place on which nothing was read as the bank stands.
    std::vector<std::pair<int, int>> candidates() const {
        std::vector<std::pair<int, int>> pairs;
        auto const& now = evidence_.back();
        auto const& partial = search_.partial_;
        int const nodes = static_cast<int>(partial.terminals().size());
        for (int a = 0; a < nodes; ++a)
            for (int b = a + 1; b < nodes; ++b) {
                if (!search_.places_.together(a, b)) continue;
                if (now.is_ohms && (partial.is_post(a) || partial.is_post(b))) continue;
                bool const taken = std::any_of(evidence_.begin(), evidence_.end(), [&](Evidence const& read) {
                    return read.made == now.made && read.pending < 0 && read.clips.empty() &&
                           ((read.red == a && read.black == b) || (read.red == b && read.black == a));
                });
                if (!taken) pairs.emplace_back(a, b);
            }
        return pairs;
    }

    // By suspect, then by pair.
    std::vector<std::vector<View>> view(std::vector<Ranked> const& ranked,
                                        std::vector<std::pair<int, int>> const& pairs) {
        auto const& now = evidence_.back();
        std::vector<std::vector<View>> views(ranked.size());
        for (std::size_t r = 0; r < ranked.size(); ++r) {
            auto const suspect = ranked[r].suspect;
            if (now.is_ohms) {
                auto const copper = search_.partial_.copper(now.made, suspects_[suspect].deviation, {});
                for (auto const& [a, b] : pairs) {
                    double const joined = copper[as_index(a)] == copper[as_index(b)] ? 1.0 : 0.0;
                    views[r].push_back({joined, 0.1, joined, joined, false});
                }
                continue;
            }
            auto const& here = stand(suspect, now.made);
            for (auto const& [a, b] : pairs) {
                auto const open = here.open.between(a, b);
                double const volts = shown(open), loaded = shown(here.loaded.between(a, b));
                views[r].push_back(
                    {volts, spread(open, suspects_[suspect]), std::min(volts, loaded), std::max(volts, loaded), !open});
            }
        }
        return views;
    }

    static bool tells(View const& one, View const& other) {
        return std::max(one.low - other.high, other.low - one.high) > 3.0 * std::hypot(one.spread, other.spread);
    }

    // By ranked suspect, the number of its group: no reading tells its members apart.
    std::vector<std::size_t> group(std::vector<Ranked> const& ranked, std::size_t pairs,
                                   std::vector<std::vector<View>> const& views, MistakeFound& found) const {
        std::vector<std::size_t> group_of(ranked.size()), leaders;
        for (std::size_t r = 0; r < ranked.size(); ++r) {
            std::size_t g = 0;
            auto const& mistake = suspects_[ranked[r].suspect].mistake;
            for (; g < leaders.size(); ++g) {
                auto const& leading = suspects_[ranked[leaders[g]].suspect].mistake;
                if (mistake && leading && mistake == leading) break; // of another amount
                if (!mistake != !leading) continue;
                bool told = false;
                for (std::size_t p = 0; p < pairs && !told; ++p)
                    told = tells(views[r][p], views[leaders[g]][p]);
                if (!told) break;
            }
            if (g == leaders.size()) {
                leaders.push_back(r);
                found.chances.emplace_back();
            }
            group_of[r] = g;
            auto& chance = found.chances[g];
            chance.probability += ranked[r].probability;
            bool const is_likely =
                ranked[r].probability >= internal::mistake_search::worth_saying * ranked[leaders[g]].probability;
            if (mistake && is_likely &&
                std::find(chance.alike.begin(), chance.alike.end(), *mistake) == chance.alike.end())
                chance.alike.push_back(*mistake);
        }
        return group_of;
    }

    std::optional<ProbeAsked> most_telling(std::vector<Ranked> const& ranked,
                                           std::vector<std::pair<int, int>> const& pairs,
                                           std::vector<std::vector<View>> const& views,
                                           std::vector<std::size_t> const& group_of, std::size_t groups) const {
        double most = internal::mistake_search::least_bits;
        std::optional<std::size_t> best;
        std::vector<std::pair<double, std::size_t>> order; // by volts
        for (std::size_t p = 0; p < pairs.size(); ++p) {
            order.clear();
            double known = 0.0; // what does not hang on loads that are off
            for (std::size_t r = 0; r < ranked.size(); ++r) {
                auto const& view = views[r][p];
                if (view.high - view.low > view.spread) continue;
                order.emplace_back(view.volts, r);
                known += ranked[r].probability;
            }
            std::sort(order.begin(), order.end());
            double bits = 0.0, mass = 0.0;
            auto const close = [&] {
                if (mass > 0.0) bits -= mass * std::log2(mass / known);
                mass = 0.0;
            };
            for (std::size_t i = 0; i < order.size(); ++i) {
                if (i > 0 && tells(views[order[i].second][p], views[order[i - 1].second][p])) close();
                mass += ranked[order[i].second].probability;
            }
            close();
            if (bits > most * (1.0 + 1e-9)) {
                most = bits;
                best = p;
            }
        }
        if (!best) return std::nullopt;
        auto const& names = search_.partial_.terminals();
        ProbeAsked asked{names[as_index(pairs[*best].first)],
                         names[as_index(pairs[*best].second)],
                         evidence_.back().is_ohms,
                         {},
                         most};
        std::vector<char> said(groups, 0);
        for (std::size_t r = 0; r < ranked.size(); ++r) {
            if (std::exchange(said[group_of[r]], char{1})) continue;
            auto const& there = views[r][*best];
            asked.expected.push_back({group_of[r], there.volts * si::volt, there.floats, there.volts > 0.5});
        }
        return asked;
    }

    // The likeliest first; what is asked next names its chances by number.
    static void sort(MistakeFound& found) {
        std::vector<std::size_t> order(found.chances.size());
        for (std::size_t g = 0; g < order.size(); ++g)
            order[g] = g;
        std::stable_sort(order.begin(), order.end(), [&](auto a, auto b) {
            return found.chances[a].probability > found.chances[b].probability * (1.0 + 1e-9);
        });
        std::vector<MistakeChance> sorted;
        std::vector<std::size_t> place(order.size());
        for (std::size_t g = 0; g < order.size(); ++g) {
            place[order[g]] = g;
            sorted.push_back(std::move(found.chances[order[g]]));
        }
        found.chances = std::move(sorted);
        if (!found.next) return;
        for (auto& one : found.next->expected)
            one.chance = place[one.chance];
        std::stable_sort(found.next->expected.begin(), found.next->expected.end(),
                         [](auto const& a, auto const& b) { return a.chance < b.chance; });
    }

    MistakeSearch const& search_;
    std::vector<Evidence> const& evidence_;
    std::vector<SuspectedMistake> const& suspects_;
    std::vector<std::vector<Stand>> stands_; // by suspect
    std::vector<double> logs_;               // by suspect, not normalized
    double battery_volts_;                   // [V]
};

BANKWRIGHT_INLINE MistakeSearch::MistakeSearch(Bank const& bank, PartialBank const& partial,
                                               HookupOptions const& options, std::vector<double> emf_spread)
    : partial_(partial), meter_(bank, partial, options), emf_spread_(std::move(emf_spread)), places_(places_of(bank)) {
    for (auto const& [plus, minus] : load_terminals(bank))
        loads_.emplace_back(partial.node(plus), partial.node(minus));
}

BANKWRIGHT_INLINE MistakeFound MistakeSearch::search(std::vector<Evidence> const& evidence,
                                                     std::vector<SuspectedMistake> const& suspects) const {
    return Weighing(*this, evidence, suspects).find();
}

} // namespace bankwright
