// Which spread has which value of a bank? What its file states, else what is usual.
#pragma once

#include "bankwright/analyses/emf_range.hpp"
#include "bankwright/analyses/spreads.hpp"
#include "bankwright/bank/bank.hpp"
#include "bankwright/devices/battery_resistance.hpp"
#include "bankwright/devices/conductor_resistance.hpp"

#include <algorithm>
#include <string_view>

namespace bankwright {

class SpreadsOfBank {
public:
    SpreadsOfBank(Bank const& bank, Spreads const& usual) : bank_(bank), usual_(usual) {}

    // Relative, of a battery's internal resistance. What its label leaves open is wider than what a stated one does.
    double of_resistance(Battery const& battery) const {
        auto const wider = resistance_spread(battery).value() / stated_resistance_spread.value();
        return stated(battery.id, "resistance", Spread::of(std::min(usual_.resistance.value() * wider, 0.95)));
    }
    double of_capacity(Battery const& battery) const { return stated(battery.id, "capacity", usual_.capacity); }
    double of_charge(Battery const& battery) const { return stated(battery.id, "charge", usual_.charge); } // points
    double of_emf(Battery const& battery) const { return stated(battery.id, "emf", Spread::of(0.0)); }

    // Relative, of all of a conductor: its wire's and its joints' reaches together, which is the most there can be.
    double of_conductor(Conductor const& conductor) const {
        auto const all = resistance(conductor, bank_.system.ambient, bank_.system.joint).value();
        if (conductor.resistance || all <= 0.0) return stated(conductor.id, "resistance", usual_.conductor);
        auto const joints = 2.0 * conductor.joint.value_or(bank_.system.joint).value();
        auto const joint =
            conductor.joint ? stated(conductor.id, "joint", usual_.joint) : stated({}, "joint", usual_.joint);
        return ((all - joints) * usual_.conductor.value() + joints * joint) / all;
    }

    template <class Device>
    double of_device(Device const& device) const {
        return stated(device.id, "resistance", usual_.contact);
    }
    double of_contact(Connector const& connector) const { return stated(connector.id, "contact", usual_.contact); }

private:
    double stated(std::string_view part, std::string_view key, Spread usual) const {
        for (auto const& tolerance : bank_.tolerances)
            if (tolerance.part == part && tolerance.key == key) return tolerance.spread.value();
        return usual.value();
    }

    Bank const& bank_;
    Spreads usual_;
};

// Open-circuit voltages at the two ends of what the charge, or the stated emf, may be.
inline EmfRange emf_range(Battery const& battery, SpreadsOfBank const& spreads, Temperature ambient) {
    if (battery.emf) {
        auto const reach = spreads.of_emf(battery) * battery.emf->value();
        return {battery.emf->value() - reach, battery.emf->value() + reach};
    }
    auto const charge = battery.charge.value_or(StateOfCharge::of(1.0)).value();
    auto const points = spreads.of_charge(battery);
    return emf_range(battery, charge - points, charge + points, ambient);
}

} // namespace bankwright
