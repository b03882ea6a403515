// Bodies of hookup_probes.hpp.
#pragma once

#include "bankwright/analyses/hookup/hookup_probes.hpp"
#include "bankwright/analyses/hookup/last_devices.hpp"
#include "bankwright/bank/terminals.hpp"
#include "bankwright/graph/as_index.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace bankwright {

BANKWRIGHT_INLINE HookupProbes::HookupProbes(Bank const& bank, PartialBank const& partial)
    : partial_(partial), places_(places_of(bank)), reach_(partial.terminals().size(), 0) {
    for (auto const& [plus, minus] : load_terminals(bank))
        loads_.emplace_back(partial.node(plus), partial.node(minus));
    for_each_part(bank, [&](PartKind kind, auto const& part) {
        int const reach = kind == PartKind::battery     ? 1
                          : kind == PartKind::busbar    ? 2
                          : kind == PartKind::connector ? 5
                          : kind == PartKind::motor || kind == PartKind::load || kind == PartKind::charger ||
                                  kind == PartKind::converter
                              ? 3
                              : 4;
        for (auto const& terminal : terminals_of(part))
            reach_[as_index(partial.node(terminal))] = reach;
    });
}

BANKWRIGHT_INLINE bool HookupProbes::has_battery(int node, Potentials const& now) const {
    auto const island = now.island[as_index(node)];
    for (std::size_t b = 0; b < partial_.batteries(); ++b)
        if (now.island[as_index(partial_.plus(b))] == island) return true;
    return false;
}

BANKWRIGHT_INLINE double HookupProbes::span(int node, Potentials const& now) const {
    double low = now.volts[as_index(node)], high = low;
    for (std::size_t n = 0; n < now.volts.size(); ++n) {
        if (now.island[n] != now.island[as_index(node)]) continue;
        low = std::min(low, now.volts[n]);
        high = std::max(high, now.volts[n]);
    }
    return high - low;
}

BANKWRIGHT_INLINE bool HookupProbes::is_live(Connection const& connection, Potentials const& now) const {
    return std::any_of(connection.paths.begin(), connection.paths.end(),
                       [&](auto const& path) { return has_battery(path.from, now) || has_battery(path.to, now); });
}

BANKWRIGHT_INLINE Probes HookupProbes::ends(Connection const& connection, Potentials const& now) const {
    auto const& path = connection.paths.front();
    Probes const as_written{path.from, path.to}, turned{path.to, path.from};
    if (partial_.is_post(path.from) != partial_.is_post(path.to))
        return partial_.is_post(path.to) ? as_written : turned;
    return span(path.to, now) < span(path.from, now) ? turned : as_written;
}

BANKWRIGHT_INLINE std::vector<std::string> HookupProbes::places_of_work(Probes const& ends) const {
    if (together(ends.first, ends.second)) return {place(ends.first)};
    return {place(ends.first), place(ends.second)};
}

BANKWRIGHT_INLINE Probes HookupProbes::gap(Connection const& connection, Potentials const& now) const {
    auto const& first = connection.paths.front();
    if (connection.paths.size() == 1) return {first.from, first.to};
    auto const& second = connection.paths.back();
    if (!now.between(first.from, second.from) && now.between(first.to, second.to)) return {first.to, second.to};
    return {first.from, second.from};
}

BANKWRIGHT_INLINE Probes HookupProbes::across(Connection const& connection, Potentials const& before,
                                              Potentials const& now) const {
    auto const& path = connection.paths.front();
    for (auto const& [plus, minus] : loads_)
        if (!before.between(plus, minus) && now.between(plus, minus)) return {plus, minus};
    bool joined = false;
    for (auto const& p : connection.paths)
        joined = joined || !before.between(p.from, p.to);
    // Voltages closer than a microvolt are the same: then what is easier to reach.
    constexpr double same = 1e-6; // [V]
    Probes best{path.from, path.to};
    double most = -1.0;
    int nearest = 0;
    int least_reach = 0;
    auto const reach = [&](int n) { return n == path.from || n == path.to ? 0 : reach_[as_index(n)]; };
    auto const nodes = static_cast<int>(now.volts.size());
    for (int a = 0; a < nodes; ++a)
        for (int b = a + 1; b < nodes; ++b) {
            auto const apart = before.island[as_index(a)] != before.island[as_index(b)];
            auto const volts = now.between(a, b);
            if (!volts || apart != joined) continue;
            if (now.island[as_index(a)] != now.island[as_index(path.from)] &&
                now.island[as_index(a)] != now.island[as_index(connection.paths.back().from)])
                continue;
            auto const size = std::abs(*volts);
            auto const effort = reach(a) + reach(b);
            bool const here = size > same && (together(a, path.from) || together(a, path.to)); // where the hands are
            auto const near = !together(a, b) ? 0 : here ? 2 : 1;
            if (near < nearest) continue;
            if (near == nearest && (size < most - same || (size <= most + same && effort >= least_reach))) continue;
            nearest = near;
            best = {a, b};
            most = size;
            least_reach = effort;
        }
    return best;
}

BANKWRIGHT_INLINE std::optional<Probes> HookupProbes::most_live(Potentials const& now) const {
    double most = 0.0;
    for (std::size_t b = 0; b < partial_.batteries(); ++b)
        most = std::max(most, std::abs(partial_.emf(b)));
    std::optional<Probes> live;
    for (std::size_t a = 0; a < partial_.batteries(); ++a)
        for (std::size_t b = 0; b < partial_.batteries(); ++b) {
            auto const volts = now.between(partial_.plus(a), partial_.minus(b));
            if (!volts || std::abs(*volts) <= most + 1e-6 || !together(partial_.plus(a), partial_.minus(b))) continue;
            most = std::abs(*volts);
            live = Probes{partial_.plus(a), partial_.minus(b)};
        }
    return live;
}

} // namespace bankwright
