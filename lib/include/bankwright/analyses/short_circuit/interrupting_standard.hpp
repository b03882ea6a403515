// What does ABYC E-11 ask that each device of a bank interrupts, whatever the computation says?
#pragma once

#include "bankwright/analyses/short_circuit/device_duty.hpp"
#include "bankwright/bank/bank.hpp"
#include "bankwright/devices/battery_nominal.hpp"
#include "bankwright/devices/battery_resistance.hpp"
#include "bankwright/devices/battery_voltage.hpp"
#include "bankwright/devices/protection_rating.hpp"
#include "bankwright/wiring/arrangement.hpp"
#include "bankwright/wiring/wiring_regions.hpp"

#include <algorithm>
#include <cstddef>
#include <map>
#include <optional>
#include <string>

namespace bankwright {

// Amperes and ampere-hours of a string count once: batteries in series are not added, parallel strings are.
class InterruptingStandard {
public:
    explicit InterruptingStandard(Bank const& closed) : bank_(closed) {
        auto const graph = wiring_graph(bank_);
        auto const form = arrangement(graph, graph.edges, judge(graph, graph.edges));
        if (bank_.batteries.empty() || form.series < 1) return;
        series_ = form.series;
        for (std::size_t e = 0; e < graph.edges.size(); ++e)
            if (auto const kind = graph.parts[static_cast<std::size_t>(graph.edges[e].part)].kind;
                kind == PartKind::breaker || kind == PartKind::fuse)
                place_[graph.id(graph.edges[e])] =
                    feed_path(graph, static_cast<int>(e)) ? BreakerPlace::main : BreakerPlace::branch;
    }

    // Raises what a device must interrupt to what the standard asks.
    void raise(DeviceDuty& duty) const {
        auto const place = place_.find(duty.id);
        if (place == place_.end()) return;
        auto const cranking = sum([](Battery const& b) { return b.cranking; });
        auto const makers = makers_short_circuit();
        if (cranking && !makers) { // the maker's own figure is the standard's first choice
            auto const volts =
                bank_.system.voltage.value_or(static_cast<double>(series_) * nominal_voltage(bank_.batteries.front()));
            auto const need = interrupting_need(*cranking, volts, place->second);
            duty.table = need.current;
            raise(duty, need, NeededBy::table);
        }
        if (place->second != BreakerPlace::main) return; // the clause is of the battery's own device
        auto const capacity = sum([](Battery const& b) { return b.capacity; });
        auto const need = large_bank_need(cranking.value_or(Current{}), capacity.value_or(Charge{}), makers);
        if (need) raise(duty, *need, NeededBy::large_bank);
    }

private:
    static void raise(DeviceDuty& duty, InterruptingNeed const& need, NeededBy by) {
        if (need.current <= duty.need) return;
        duty.need = need.current;
        duty.needed_by = by;
        duty.standard = need.source;
    }

    // Over the strings; none unless every battery states it.
    template <class Of>
    auto sum(Of&& of) const -> decltype(of(Battery())) {
        decltype(of(Battery())) total;
        for (auto const& battery : bank_.batteries) {
            auto const one = of(battery);
            if (!one) return std::nullopt;
            total = total ? *total + *one : *one;
        }
        return *total / static_cast<double>(series_);
    }

    // The batteries' own, where the file states their `resistance`: the maker's voltage over the maker's amperes.
    std::optional<Current> makers_short_circuit() const {
        return sum([this](Battery const& b) -> std::optional<Current> {
            if (!b.resistance || !(b.resistance->value() > 0.0)) return std::nullopt;
            return Current(open_circuit_voltage(b, bank_.system.ambient) / *b.resistance);
        });
    }

    Bank const& bank_;
    int series_ = 0;
    std::map<std::string, BreakerPlace> place_;
};

} // namespace bankwright
