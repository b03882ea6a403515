// Body of dead_checks.hpp.
#pragma once

#include "bankwright/analyses/hookup/dead_checks.hpp"
#include "bankwright/graph/as_index.hpp"

#include <cstddef>
#include <string>
#include <utility>

namespace bankwright {

BANKWRIGHT_INLINE std::vector<DeadCheck> dead_checks(Bank const& bank, PartialBank const& partial,
                                                     HookupProbes const& probes, Potentials const& conducting) {
    auto const& names = partial.terminals();
    auto const& all = partial.connections();
    std::vector<std::size_t> far;
    std::vector<DeadCheck> checks;
    std::vector<char> is_pin(names.size(), 0);
    for (auto const& connector : bank.connectors)
        for (auto const* pin : {"+", "-", ".plug+", ".plug-"})
            is_pin[as_index(partial.node(connector.id + pin))] = 1;
    for (std::size_t c = 0; c < all.size(); ++c) {
        if (all[c].kind != PartKind::jumper && all[c].kind != PartKind::cable) continue;
        auto const [from, to, ohms] = all[c].paths.front();
        if (!probes.together(from, to))
            far.push_back(c);
        else if (is_pin[as_index(from)] || is_pin[as_index(to)])
            checks.push_back(
                {DeadCheckKind::run, all[c].part, {}, names[as_index(from)], names[as_index(to)], {}, {}, false});
    }
    std::vector<char> paired(all.size(), 0);
    for (std::size_t i = 0; i < far.size(); ++i) {
        auto const& one = all[far[i]].paths.front();
        if (paired[far[i]]) continue;
        DeadCheck check{
            DeadCheckKind::run, all[far[i]].part, {}, names[as_index(one.from)], names[as_index(one.to)], {}, {}, true};
        for (auto j = i + 1; j < far.size() && check.lengthened; ++j) {
            auto other = all[far[j]].paths.front();
            if (paired[far[j]]) continue;
            if (!probes.together(one.from, other.from)) std::swap(other.from, other.to);
            if (!probes.together(one.from, other.from) || !probes.together(one.to, other.to)) continue;
            paired[far[j]] = 1;
            check = {DeadCheckKind::loop,
                     all[far[i]].part,
                     all[far[j]].part,
                     names[as_index(one.from)],
                     names[as_index(other.from)],
                     names[as_index(one.to)],
                     names[as_index(other.to)],
                     false};
        }
        checks.push_back(std::move(check));
    }
    for (auto const& connector : bank.connectors)
        for (std::string const side : {"", ".plug"}) {
            auto const plus = partial.node(connector.id + side + "+"), minus = partial.node(connector.id + side + "-");
            if (!conducting.between(plus, minus))
                checks.push_back({DeadCheckKind::apart,
                                  connector.id,
                                  {},
                                  names[as_index(plus)],
                                  names[as_index(minus)],
                                  {},
                                  {},
                                  false});
        }
    for (auto const c : far)
        checks.push_back(
            {DeadCheckKind::hull, all[c].part, {}, names[as_index(all[c].paths.front().from)], {}, {}, {}, false});
    return checks;
}

} // namespace bankwright
