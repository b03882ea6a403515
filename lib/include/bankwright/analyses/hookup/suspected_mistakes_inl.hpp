// Body of suspected_mistakes.hpp.
#pragma once

#include "bankwright/analyses/hookup/last_devices.hpp"
#include "bankwright/analyses/hookup/suspected_mistakes.hpp"
#include "bankwright/bank/terminals.hpp"
#include "bankwright/devices/battery_nominal.hpp"
#include "bankwright/devices/battery_voltage.hpp"
#include "bankwright/graph/as_index.hpp"
#include "bankwright/graph/union_find.hpp"

#include <cstddef>
#include <string>
#include <utility>

namespace bankwright {

namespace internal {

// How often, against each other [common practice, no source; only their order of magnitude matters]. An end can be on a
// great many wrong terminals, and a lead too many between any two, each of them seldom.
namespace hookup_chance {
inline constexpr double as_described = 1.0; // a slip of who read
inline constexpr double battery = 0.3;
inline constexpr double exchanged = 0.7;
inline constexpr double not_joined = 0.8;
inline constexpr double other_post = 0.3; // of the same part
inline constexpr double elsewhere = 0.05;
inline constexpr double bypassed = 0.1;
inline constexpr double across = 0.003;
} // namespace hookup_chance

class SuspectList {
public:
    SuspectList(Bank const& bank, PartialBank const& partial, Places const& places, Made const& there)
        : bank_(bank), partial_(partial), places_(places), there_(there), owner_(partial.terminals().size(), -1),
          copper_(static_cast<int>(partial.terminals().size())) {
        int number = 0;
        for_each_part(bank, [&](PartKind, auto const& part) {
            for (auto const& terminal : terminals_of(part))
                owner_[as_index(partial.node(terminal))] = number;
            ++number;
        });
        for (auto const& connection : partial.connections()) // the same point once everything is closed
            for (auto const& path : connection.paths)
                copper_.unite(path.from, path.to);
    }

    std::vector<SuspectedMistake> make(std::vector<char> const& battery_is_right) {
        all_.push_back({{}, {}, -1, hookup_chance::as_described, 0.0});
        for (std::size_t b = 0; b < bank_.batteries.size(); ++b)
            of_battery(b, battery_is_right[b] != 0);
        for (std::size_t c = 0; c < partial_.connections().size(); ++c)
            of_connection(c);
        for (auto const& connector : bank_.connectors) {
            exchanged(connector.id, connector.id + "+", connector.id + "-", MistakeKind::leads_exchanged);
            exchanged(connector.id, connector.id + ".plug+", connector.id + ".plug-", MistakeKind::leads_exchanged);
        }
        for (auto const& [plus, minus] : load_terminals(bank_))
            exchanged(plus.substr(0, plus.find_first_of(".+")), plus, minus, MistakeKind::leads_exchanged);
        for (auto const* devices : {&bank_.breakers, &bank_.fuses})
            for (auto const& device : *devices) {
                bypassed(device.id, device.id + ".line", device.id + ".load");
                bypassed(device.id, device.id + ".load", device.id + ".line");
            }
        across();
        return std::move(all_);
    }

private:
    std::string const& name(int node) const { return partial_.terminals()[as_index(node)]; }

    void add(Mistake mistake, Deviation deviation, int connection, double weight, double spread = 0.0) {
        all_.push_back({std::move(mistake), std::move(deviation), connection, weight, spread});
    }

    void of_battery(std::size_t b, bool is_right) {
        auto const& battery = bank_.batteries[b];
        auto const emf = partial_.emf(b);
        auto const gives = [&](MistakeKind kind, double volts, double weight, double spread) {
            Deviation deviation;
            deviation.battery = static_cast<int>(b);
            deviation.emf = volts;
            add({kind, battery.id, {}, {}}, deviation, -1, weight, spread);
        };
        exchanged(battery.id, battery.id + "+", battery.id + "-", MistakeKind::battery_turned);
        if (is_right) return;
        gives(MistakeKind::battery_turned, -emf, hookup_chance::battery, 0.02 * emf);
        if (!battery.chemistry || !(battery.cells || battery.voltage)) return;
        for (double const charge : {0.8, 0.6, 0.4, 0.2, 0.0}) {
            auto const low = open_circuit_voltage(battery, StateOfCharge::of(charge), bank_.system.ambient).value();
            if (low < emf) gives(MistakeKind::battery_low, low, 0.2 * hookup_chance::battery, 0.02 * emf);
        }
        auto const cells = cell_count(battery);
        for (int dead = 1; dead <= cells; ++dead)
            gives(MistakeKind::cell_dead, emf * (cells - dead) / cells, hookup_chance::battery / (dead * dead),
                  0.02 * emf);
    }

    void of_connection(std::size_t c) {
        auto const& connection = partial_.connections()[c];
        if (!there_[c]) return;
        auto const number = static_cast<int>(c);
        Deviation missing;
        missing.absent = number;
        add({MistakeKind::not_joined, connection.part, {}, {}}, missing, number, hookup_chance::not_joined);
        bool const is_jumper = connection.kind == PartKind::jumper;
        if (!is_jumper && connection.kind != PartKind::cable) return;
        auto const& run = (is_jumper ? bank_.jumpers : bank_.cables)[connection.index];
        auto const& path = connection.paths.front();
        for (bool const from_end : {true, false}) {
            int const at = from_end ? path.from : path.to, far = from_end ? path.to : path.from;
            auto const reached = within_reach(places_, places_.of[as_index(far)], run, connection.kind, bank_.system);
            for (int onto = 0; onto < static_cast<int>(owner_.size()); ++onto) {
                if (onto == at || onto == far || !reached[as_index(places_.of[as_index(onto)])]) continue;
                Deviation deviation;
                deviation.connection = number;
                deviation.from_end = from_end;
                deviation.onto = onto;
                bool const same_part = owner_[as_index(onto)] == owner_[as_index(at)];
                bool const same_point = copper_.find(at) == copper_.find(onto);
                add({MistakeKind::end_elsewhere, connection.part, name(at), name(onto)}, deviation, number,
                    (same_part ? hookup_chance::other_post : hookup_chance::elsewhere) * (same_point ? 0.5 : 1.0));
            }
        }
    }

    void exchanged(std::string const& part, std::string const& plus, std::string const& minus, MistakeKind kind) {
        Deviation deviation;
        deviation.plus = partial_.node(plus);
        deviation.minus = partial_.node(minus);
        if (any_landed(deviation.plus) || any_landed(deviation.minus))
            add({kind, part, plus, minus}, deviation, -1, hookup_chance::exchanged);
    }

    bool any_landed(int node) const {
        for (std::size_t c = 0; c < there_.size(); ++c) {
            auto const& connection = partial_.connections()[c];
            if (!there_[c] || (connection.kind != PartKind::jumper && connection.kind != PartKind::cable)) continue;
            if (connection.paths.front().from == node || connection.paths.front().to == node) return true;
        }
        return false;
    }

    void bypassed(std::string const& part, std::string const& meant, std::string const& instead) {
        Deviation deviation;
        deviation.meant = partial_.node(meant);
        deviation.instead = partial_.node(instead);
        if (any_landed(deviation.meant))
            add({MistakeKind::bypassed, part, meant, instead}, deviation, -1, hookup_chance::bypassed);
    }

    // Within one place; what a foreign lead joins over a long way is seldom a slip of today.
    void across() {
        for (int a = 0; a < static_cast<int>(owner_.size()); ++a)
            for (int b = a + 1; b < static_cast<int>(owner_.size()); ++b) {
                Deviation deviation;
                deviation.extra = a;
                deviation.other = b;
                add({MistakeKind::across, {}, name(a), name(b)}, deviation, -1,
                    hookup_chance::across * (places_.together(a, b) ? 1.0 : 0.2));
            }
    }

    Bank const& bank_;
    PartialBank const& partial_;
    Places const& places_;
    Made const& there_;
    std::vector<int> owner_; // by node: its part
    solver::UnionFind copper_;
    std::vector<SuspectedMistake> all_;
};

} // namespace internal

BANKWRIGHT_INLINE std::vector<SuspectedMistake> suspected_mistakes(Bank const& bank, PartialBank const& partial,
                                                                   Places const& places,
                                                                   std::vector<char> const& battery_is_right,
                                                                   Made const& there) {
    return internal::SuspectList(bank, partial, places, there).make(battery_is_right);
}

} // namespace bankwright
