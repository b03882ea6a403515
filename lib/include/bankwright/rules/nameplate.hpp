// What do motors and loads draw by their nameplates? A thin wire starves a motor and the solved current falls: copper,
// devices and plugs are chosen for the nameplate current all the same.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/wiring/wiring_verdict.hpp"

#include <algorithm>
#include <iterator>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace bankwright {

// Most that its control lets through, else what is on the nameplate.
inline std::optional<Current> nameplate_current(Motor const& motor) {
    return motor.max_current ? motor.max_current : motor.current;
}

// A power counts at the nominal voltage. None of an ohmic load: the law of Ohm has no nameplate.
inline std::optional<Current> nameplate_current(Load const& load, Voltage nominal) {
    if (load.current) return load.current;
    if (load.power && nominal.value() > 0.0) return Current(*load.power / nominal);
    return std::nullopt;
}

// The bank with each of these motors as a load of what its control or nameplate lets it draw.
template <class Chosen>
Bank with_motors_at_nameplate(Bank bank, Chosen&& chosen) {
    std::vector<Motor> left;
    for (auto& motor : bank.motors) {
        auto const amps = nameplate_current(motor);
        if (!amps || !chosen(motor)) {
            left.push_back(std::move(motor));
            continue;
        }
        Load load;
        load.id = std::move(motor.id);
        load.current = amps;
        bank.loads.push_back(std::move(load));
    }
    bank.motors = std::move(left);
    return bank;
}

// The bank with every motor and load at its nameplate current, as far as it is fed.
inline Bank at_nameplate(Bank const& bank, WiringGraph const& graph, WiringVerdict const& verdict) {
    auto changed = with_motors_at_nameplate(bank, [](Motor const&) { return true; });
    for (auto& load : changed.loads) {
        auto const same = [&](LoadVerdict const& one) {
            return graph.id(graph.edges[static_cast<std::size_t>(one.edge)]) == load.id;
        };
        auto const fed = std::find_if(verdict.loads.begin(), verdict.loads.end(), same);
        if (fed == verdict.loads.end()) continue;
        auto const amps = nameplate_current(load, fed->volts * si::volt);
        if (!amps) continue;
        load.current = amps;
        load.power.reset();
    }
    return changed;
}

} // namespace bankwright
