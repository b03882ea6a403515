// Bodies of assumption_words.hpp.
#pragma once

#include "bankwright/analyses/spreads.hpp"
#include "bankwright/devices/battery_acceptance.hpp"
#include "bankwright/devices/battery_capacity.hpp"
#include "bankwright/devices/battery_resistance.hpp"
#include "bankwright/devices/battery_weak_cell.hpp"
#include "bankwright/reports/assumption_words.hpp"

#include <algorithm>
#include <cstddef>
#include <utility>

#include <fmt/format.h>

namespace bankwright {
namespace internal::assuming {

// The parts of which one thing is assumed.
class Same {
public:
    void add(std::string what, std::string const& id) {
        auto const known =
            std::find_if(said_.begin(), said_.end(), [&](auto const& said) { return said.first == what; });
        if (known == said_.end())
            said_.push_back({std::move(what), {id}});
        else
            known->second.push_back(id);
    }

    // "{}" in what is said stands for the parts.
    std::vector<std::string> said() const {
        std::vector<std::string> all;
        for (auto const& [what, ids] : said_)
            all.push_back(fmt::format(fmt::runtime(what), listed(ids)));
        return all;
    }

private:
    static std::string listed(std::vector<std::string> const& ids) {
        constexpr std::size_t few = 4;
        if (ids.size() > few) return fmt::format("{} batteries", ids.size());
        std::string out;
        for (std::size_t k = 0; k < ids.size(); ++k)
            out += fmt::format("{}`{}`", k == 0 ? "" : k + 1 == ids.size() ? " and " : ", ", ids[k]);
        return out;
    }
    std::vector<std::pair<std::string, std::vector<std::string>>> said_;
};

inline void resistance_of(Battery const& battery, Same& same) {
    if (battery.resistance || !battery.chemistry || !(battery.cranking || battery.capacity)) return;
    same.add(fmt::format("resistance of {{}} by {}, within {:.0f} %",
                         battery.cranking ? "cranking amperes" : "chemistry and capacity",
                         100.0 * resistance_spread(battery).value()),
             battery.id);
}

inline void exponent_of(Battery const& battery, Same& same) {
    if (battery.reserve || !battery.chemistry || !battery.capacity) return;
    auto const exponent = usual_exponent(*battery.chemistry);
    same.add(fmt::format("Peukert exponent of {{}} {:.2f} by chemistry, {:.2f} to {:.2f} usual", exponent.usual,
                         exponent.low, exponent.high),
             battery.id);
}

} // namespace internal::assuming

BANKWRIGHT_INLINE std::vector<std::string> assumptions(Bank const& bank, Asked asked, bool part_throttle) {
    namespace assuming = internal::assuming;
    auto const is_part = [](Throttle throttle) { return throttle.value() > 0.0 && throttle.value() < 1.0; };
    assuming::Same same;
    for (auto const& battery : bank.batteries)
        if (asked == Asked::run || asked == Asked::everything) assuming::exponent_of(battery, same);
    for (auto const& battery : bank.batteries)
        assuming::resistance_of(battery, same);
    for (auto const& battery : bank.batteries) {
        if (!battery.charge && !battery.emf) same.add("{} full", battery.id);
        if (asked != Asked::currents && !battery.health && !has_weak_cell(battery))
            same.add(
                fmt::format("{{}} as good as new, though {:.0f} % of the capacity may be gone", 100.0 * unknown_wear),
                battery.id);
    }
    for (auto const& charger : bank.chargers)
        if (asked == Asked::run && charger.connected.value_or(false))
            same.add(is_on_board(charger) ? "{} gives all the while" : "{} plugged in ashore and of no help under way",
                     charger.id);
    for (auto const& converter : bank.converters)
        if (asked != Asked::currents) same.add("{} at work all the while", converter.id);
    auto said = same.said();
    if (asked == Asked::charge || (asked == Asked::everything && !bank.chargers.empty()))
        said.push_back(fmt::format("what a battery takes as it fills by chemistry, times within {:.0f} %",
                                   usual_charging_spread.in_percent()));
    for (auto const& motor : bank.motors)
        part_throttle = part_throttle || (motor.throttle && is_part(*motor.throttle));
    if (!bank.motors.empty() && part_throttle)
        said.push_back("current of a motor at part throttle by a cube law of the propeller");
    return said;
}

BANKWRIGHT_INLINE std::string assumed_line(std::vector<std::string> const& assumptions) {
    if (assumptions.empty()) return {};
    return fmt::format("assumed: {}\n", fmt::join(assumptions, "; "));
}

} // namespace bankwright
