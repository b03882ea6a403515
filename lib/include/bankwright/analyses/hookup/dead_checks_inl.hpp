// Body of dead_checks.hpp.
#pragma once

#include "bankwright/analyses/hookup/dead_checks.hpp"
#include "bankwright/bank/terminals.hpp"
#include "bankwright/graph/as_index.hpp"

#include <algorithm>
#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <utility>

namespace bankwright {

namespace internal {

class DeadCheckList {
public:
    DeadCheckList(Bank const& bank, PartialBank const& partial, HookupProbes const& probes)
        : bank_(bank), partial_(partial), probes_(probes), is_pin_(partial.terminals().size(), 0) {
        for (auto const& connector : bank.connectors)
            for (auto const* pin : {"+", "-", ".plug+", ".plug-"})
                is_pin_[as_index(partial.node(connector.id + pin))] = 1;
    }

    std::vector<DeadCheck> make(Potentials const& dead, Potentials const& conducting) {
        leads(dead);
        loops();
        for (auto const& connector : bank_.connectors)
            for (std::string const side : {"", ".plug"}) {
                auto const plus = partial_.node(connector.id + side + "+"),
                           minus = partial_.node(connector.id + side + "-");
                if (!conducting.between(plus, minus)) add(DeadCheckKind::apart, connector.id, plus, minus);
            }
        across_plugs();
        wired_loads(dead);
        for (auto const c : far_) {
            auto const from = all()[c].paths.front().from;
            auto& check = add(DeadCheckKind::hull, all()[c].part, from, from);
            check.black.clear();
            check.negative = is_negative(from);
        }
        return std::move(checks_);
    }

private:
    std::vector<Connection> const& all() const { return partial_.connections(); }
    std::string const& name(int node) const { return partial_.terminals()[as_index(node)]; }

    DeadCheck& add(DeadCheckKind kind, std::string part, int red, int black) {
        DeadCheck check;
        check.kind = kind;
        check.part = std::move(part);
        check.red = name(red);
        check.black = name(black);
        check.place = probes_.place(red);
        checks_.push_back(std::move(check));
        return checks_.back();
    }

    // A lead too many between a receptacle and its plug shows nowhere else before the breaker is closed.
    void across_plugs() {
        for (auto const& connector : bank_.connectors)
            for (auto const& [pin, other] : {std::pair{"+", ".plug-"}, std::pair{"-", ".plug+"}})
                add(DeadCheckKind::apart, connector.id, partial_.node(connector.id + pin),
                    partial_.node(connector.id + other));
    }

    // Those of a plug, and those that are landed dead, are checked from end to end; what runs from one place to
    // another, later.
    void leads(Potentials const& dead) {
        for (std::size_t c = 0; c < all().size(); ++c) {
            if (all()[c].kind != PartKind::jumper && all()[c].kind != PartKind::cable) continue;
            auto const& path = all()[c].paths.front();
            if (!probes_.together(path.from, path.to))
                far_.push_back(c);
            else if (is_pin_[as_index(path.from)] || is_pin_[as_index(path.to)] || dead.between(path.from, path.to))
                add(DeadCheckKind::run, all()[c].part, path.from, path.to);
        }
    }

    void loops() {
        std::vector<char> paired(all().size(), 0);
        for (std::size_t i = 0; i < far_.size(); ++i) {
            auto const& one = all()[far_[i]].paths.front();
            if (paired[far_[i]]) continue;
            auto& check = add(DeadCheckKind::run, all()[far_[i]].part, one.from, one.to);
            check.lengthened = true;
            for (auto j = i + 1; j < far_.size() && check.lengthened; ++j) {
                auto other = all()[far_[j]].paths.front();
                if (paired[far_[j]]) continue;
                if (!probes_.together(one.from, other.from)) std::swap(other.from, other.to);
                if (!probes_.together(one.from, other.from) || !probes_.together(one.to, other.to)) continue;
                paired[far_[j]] = 1;
                check.kind = DeadCheckKind::loop;
                check.other = all()[far_[j]].part;
                check.black = name(other.from);
                check.clip = name(one.to);
                check.onto = name(other.to);
                check.lengthened = false;
            }
        }
    }

    // What hangs on its leads without a plug shows itself from + to -. All that hang between the same two points are
    // one check.
    void wired_loads(Potentials const& dead) {
        std::map<std::pair<int, int>, std::size_t> known; // islands: number of the check
        auto const ends = [&](auto const& parts, auto const& ohms_of) {
            for (auto const& part : parts) {
                auto const names = terminals_of(part);
                for (std::size_t n = 0; n + 1 < names.size(); n += 2) {
                    auto const plus = partial_.node(names[n]), minus = partial_.node(names[n + 1]);
                    if (is_pinned(plus) || !is_landed(plus) || !is_landed(minus)) continue;
                    auto const at = std::pair(dead.island[as_index(plus)], dead.island[as_index(minus)]);
                    auto const [place, is_new] = known.emplace(at, checks_.size());
                    if (is_new) {
                        auto const [red, black] = upstream(plus, minus, dead);
                        add(DeadCheckKind::load, part.id, red, black).ohms = ohms_of(part);
                    }
                    auto& check = checks_[place->second];
                    if (!is_new) check.ohms.reset();
                    if (check.loads.empty() || check.loads.back() != part.id) check.loads.push_back(part.id);
                }
            }
        };
        auto const unknown = [](auto const&) { return std::optional<Resistance>(); };
        ends(bank_.motors, unknown);
        ends(bank_.loads, [](Load const& load) { return load.resistance; });
        ends(bank_.chargers, unknown);
        ends(bank_.converters, unknown);
    }

    // What is joined by then is one point: where its supply comes from, if both are in one place, so that the leads are
    // measured with it.
    std::pair<int, int> upstream(int plus, int minus, Potentials const& dead) const {
        auto const same = [&](int a, int b) { return dead.island[as_index(a)] == dead.island[as_index(b)]; };
        for (auto const& connection : all()) {
            bool const opens = connection.kind == PartKind::breaker || connection.kind == PartKind::switch_ ||
                               connection.kind == PartKind::relay || connection.kind == PartKind::selector;
            if (!opens) continue;
            for (auto const& path : connection.paths)
                for (auto const red : {path.to, path.from}) {
                    if (!same(red, plus)) continue;
                    for (auto const black : ends_of(minus, dead))
                        if (probes_.together(red, black)) return {red, black};
                }
        }
        for (auto const red : ends_of(plus, dead))
            for (auto const black : ends_of(minus, dead))
                if (probes_.together(red, black) && is_by_a_battery(red)) return {red, black};
        return {plus, minus};
    }

    bool is_by_a_battery(int node) const {
        for (std::size_t b = 0; b < partial_.batteries(); ++b)
            if (probes_.together(node, partial_.plus(b))) return true;
        return false;
    }

    // Terminals of conductors that are one point with this one by then.
    std::vector<int> ends_of(int node, Potentials const& dead) const {
        std::vector<int> ends;
        for (auto const& connection : all())
            if (connection.kind == PartKind::jumper || connection.kind == PartKind::cable)
                for (auto const end : {connection.paths.front().from, connection.paths.front().to})
                    if (dead.island[as_index(end)] == dead.island[as_index(node)]) ends.push_back(end);
        return ends;
    }

    // The conductor on it comes from a plug, which is apart.
    bool is_pinned(int node) const {
        for (auto const& connection : all())
            for (auto const& path : connection.paths)
                if ((path.from == node && is_pin_[as_index(path.to)]) ||
                    (path.to == node && is_pin_[as_index(path.from)]))
                    return true;
        return false;
    }
    bool is_landed(int node) const {
        for (auto const& connection : all())
            for (auto const& path : connection.paths)
                if (path.from == node || path.to == node) return true;
        return false;
    }

    // On the side of a battery's negative post, through whatever is made in the end.
    bool is_negative(int node) {
        if (!whole_) whole_ = partial_.read(Made(all().size(), 1));
        auto const& whole = *whole_;
        double lowest = whole.volts[as_index(node)];
        for (std::size_t n = 0; n < whole.volts.size(); ++n)
            if (whole.island[n] == whole.island[as_index(node)]) lowest = std::min(lowest, whole.volts[n]);
        constexpr double same = 0.5; // [V]
        return whole.volts[as_index(node)] < lowest + same;
    }

    Bank const& bank_;
    PartialBank const& partial_;
    HookupProbes const& probes_;
    std::vector<char> is_pin_;
    std::vector<std::size_t> far_;    // from one place to another
    std::optional<Potentials> whole_; // with everything made
    std::vector<DeadCheck> checks_;
};

} // namespace internal

BANKWRIGHT_INLINE std::vector<DeadCheck> dead_checks(Bank const& bank, PartialBank const& partial,
                                                     HookupProbes const& probes, Potentials const& dead,
                                                     Potentials const& conducting) {
    return internal::DeadCheckList(bank, partial, probes).make(dead, conducting);
}

} // namespace bankwright
