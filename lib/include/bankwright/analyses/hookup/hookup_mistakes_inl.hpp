// Bodies of hookup_mistakes.hpp.
#pragma once

#include "bankwright/analyses/hookup/hookup_mistakes.hpp"
#include "bankwright/analyses/hookup/last_devices.hpp"
#include "bankwright/bank/terminals.hpp"
#include "bankwright/devices/battery_nominal.hpp"
#include "bankwright/devices/battery_voltage.hpp"
#include "bankwright/graph/as_index.hpp"
#include "bankwright/graph/union_find.hpp"

#include <string>
#include <utility>

namespace bankwright {

namespace internal {

class MistakeList {
public:
    MistakeList(Bank const& bank, PartialBank const& partial)
        : bank_(bank), partial_(partial), copper_(static_cast<int>(partial.terminals().size())),
          siblings_(partial.terminals().size()), busbar_(partial.terminals().size(), 0) {
        for (auto const& connection : partial.connections())
            for (auto const& path : connection.paths)
                copper_.unite(path.from, path.to);
        for_each_part(bank, [&](PartKind kind, auto const& part) {
            auto const names = terminals_of(part);
            for (auto const& name : names) {
                auto const node = as_index(partial.node(name));
                busbar_[node] = kind == PartKind::busbar;
                for (auto const& other : names)
                    if (other != name) siblings_[node].push_back(partial.node(other));
            }
        });
    }

    std::vector<PossibleMistake> make() {
        batteries();
        for (std::size_t c = 0; c < partial_.connections().size(); ++c) {
            auto const& connection = partial_.connections()[c];
            if (connection.kind != PartKind::jumper && connection.kind != PartKind::cable) continue;
            ends(static_cast<int>(c), true, connection.paths.front().from);
            ends(static_cast<int>(c), false, connection.paths.front().to);
        }
        for (auto const& connector : bank_.connectors) {
            exchanged(connector.id, connector.id + "+", connector.id + "-");
            exchanged(connector.id, connector.id + ".plug+", connector.id + ".plug-");
        }
        for (auto const& [plus, minus] : load_terminals(bank_))
            exchanged(owner(plus), plus, minus);
        return std::move(all_);
    }

private:
    std::string const& name(int node) const { return partial_.terminals()[as_index(node)]; }

    // The part of a load's terminal: "troll+", "shore.1+".
    static std::string owner(std::string const& terminal) { return terminal.substr(0, terminal.find_first_of(".+")); }

    void battery(std::size_t b, MistakeKind kind, double emf) {
        Deviation deviation;
        deviation.battery = static_cast<int>(b);
        deviation.emf = emf;
        all_.push_back({{kind, bank_.batteries[b].id, {}, {}}, deviation, -1});
    }

    void batteries() {
        constexpr double low = 0.2; // of its charge
        for (std::size_t b = 0; b < bank_.batteries.size(); ++b)
            battery(b, MistakeKind::battery_turned, -partial_.emf(b));
        for (std::size_t b = 0; b < bank_.batteries.size(); ++b) {
            auto const& one = bank_.batteries[b];
            if (!one.chemistry || !(one.cells || one.voltage)) continue;
            if (one.emf || one.charge.value_or(StateOfCharge::of(1.0)).value() > low) {
                auto const emf = open_circuit_voltage(one, StateOfCharge::of(low), bank_.system.ambient).value();
                if (emf < partial_.emf(b)) battery(b, MistakeKind::battery_low, emf);
            }
            auto const living = cell_count(one) - one.dead_cells.value_or(0);
            if (living > 0) battery(b, MistakeKind::cell_dead, partial_.emf(b) * (living - 1) / living);
        }
    }

    void ends(int connection, bool from_end, int at) {
        for (auto const other : siblings_[as_index(at)])
            end(connection, from_end, at, other);
        if (partial_.is_post(at))
            for (std::size_t b = 0; b < partial_.batteries(); ++b)
                for (auto const post : {partial_.plus(b), partial_.minus(b)})
                    if (!is_sibling(at, post)) end(connection, from_end, at, post);
        if (busbar_[as_index(at)])
            for (std::size_t n = 0; n < busbar_.size(); ++n)
                if (busbar_[n]) end(connection, from_end, at, static_cast<int>(n));
    }

    bool is_sibling(int node, int other) const {
        for (auto const sibling : siblings_[as_index(node)])
            if (sibling == other) return true;
        return false;
    }

    void end(int connection, bool from_end, int at, int onto) {
        if (copper_.find(at) == copper_.find(onto)) return; // the same point once everything is closed
        Deviation deviation;
        deviation.connection = connection;
        deviation.from_end = from_end;
        deviation.onto = onto;
        auto const& part = partial_.connections()[as_index(connection)].part;
        all_.push_back({{MistakeKind::end_elsewhere, part, name(at), name(onto)}, deviation, connection});
    }

    void exchanged(std::string const& part, std::string const& plus, std::string const& minus) {
        Deviation deviation;
        deviation.plus = partial_.node(plus);
        deviation.minus = partial_.node(minus);
        int first = -1; // nothing is wrong before something is landed on either
        for (std::size_t c = 0; c < partial_.connections().size() && first < 0; ++c) {
            auto const& connection = partial_.connections()[c];
            if (connection.kind != PartKind::jumper && connection.kind != PartKind::cable) continue;
            for (auto const end : {connection.paths.front().from, connection.paths.front().to})
                if (end == deviation.plus || end == deviation.minus) first = static_cast<int>(c);
        }
        if (first >= 0) all_.push_back({{MistakeKind::leads_exchanged, part, plus, minus}, deviation, -1});
    }

    Bank const& bank_;
    PartialBank const& partial_;
    solver::UnionFind copper_;               // points joined without a battery between
    std::vector<std::vector<int>> siblings_; // by node: other terminals of its part
    std::vector<char> busbar_;
    std::vector<PossibleMistake> all_;
};

} // namespace internal

BANKWRIGHT_INLINE std::vector<PossibleMistake> possible_mistakes(Bank const& bank, PartialBank const& partial) {
    return internal::MistakeList(bank, partial).make();
}

} // namespace bankwright
