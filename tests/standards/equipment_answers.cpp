#include "standards/equipment_answers.hpp"

#include "bankwright/devices/conductor_ampacity.hpp"
#include "bankwright/devices/conductor_heating.hpp"
#include "bankwright/devices/conductor_resistance.hpp"
#include "bankwright/devices/conductor_voltage_drop.hpp"
#include "bankwright/devices/motor_propeller.hpp"
#include "bankwright/devices/protection_rating.hpp"
#include "bankwright/devices/protection_trip.hpp"

#include <functional>

namespace standards {
namespace {

using namespace bankwright;
using Answers = std::map<std::string, std::function<double(Case const&)>>;

constexpr double foot = 0.3048; // [m]
constexpr double inch = 0.0254; // [m]

Awg gauge(Case const& c) { return Awg{static_cast<int>(c.number("gauge"))}; }
Area section(Case const& c) {
    if (c.numbers.count("gauge")) return area(gauge(c));
    if (c.numbers.count("circular_mils")) return c.number("circular_mils") * circular_mil * si::square_meter;
    return c.number("square_millimeters") * 1e-6 * si::square_meter;
}
Temperature degrees(Case const& c, char const* name) { return celsius(c.number(name)); }
Current amperes(Case const& c, char const* name) { return c.number(name) * si::ampere; }
Voltage volts(Case const& c, char const* name) { return c.number(name) * si::volt; }

Conductor conductor(Case const& c) {
    Conductor wire;
    wire.id = "wire";
    if (c.numbers.count("gauge"))
        wire.size = gauge(c);
    else
        wire.size = section(c);
    if (c.numbers.count("insulation")) wire.insulation = degrees(c, "insulation");
    wire.bundle = static_cast<int>(c.number("bundle", 1));
    wire.engine_space = c.number("engine_space", 0) > 0.0;
    wire.length = c.number("feet", 1.0) * foot * si::meter;
    return wire;
}

// In the unit that the source prints.
double per_length(Case const& c, ResistancePerLength resistance) {
    return resistance.value() * (c.unit == "ohm/km" ? 1000.0 : 1000.0 * foot);
}

Motor nameplate(Case const& c) {
    Motor motor;
    motor.id = "motor";
    motor.voltage = volts(c, "voltage");
    motor.current = c.number("current", 1.0) * si::ampere;
    motor.winding = c.number("winding") * si::ohm;
    return motor;
}
MotorState running(Case const& c) { return motor_state(nameplate(c), volts(c, "voltage"), Throttle::of(1.0)); }
MotorState without_winding(Case const& c) {
    Motor motor;
    motor.voltage = 36.0 * si::volt;
    motor.current = 50.0 * si::ampere;
    return motor_state(motor, 36.0 * si::volt, Throttle::of(c.number("throttle")));
}

TripBand band(Case const& c) {
    ProtectiveDevice device;
    device.trip_class = c.word("class");
    device.rating = amperes(c, "rating");
    return trip_band(device, c.number("multiple") * *device.rating).value();
}

Routing routing(std::string const& word) {
    return word == "open" ? Routing::open : word == "enclosed" ? Routing::enclosed : Routing::enclosed_from_battery;
}

// The thinnest gauge of the federal table that has so many circular mils; odd ones below 3 AWG are not in it.
double smallest_gauge(double circular_mils) {
    for (int number = 18; number >= -3; --number)
        if (table_5(Awg{number}, celsius(60)) && area(Awg{number}).value() >= circular_mils * circular_mil)
            return number;
    return -4.0;
}

Answers const answers{
    {"table_5", [](Case const& c) { return table_5(gauge(c), degrees(c, "insulation"))->value(); }},
    {"ampacity", [](Case const& c) { return ampacity(conductor(c), celsius(30))->current.value(); }},
    {"ampacity_of_section", [](Case const& c) { return ampacity(conductor(c), celsius(30))->current.value(); }},
    {"engine_space_share", [](Case const& c) { return engine_space_share(degrees(c, "insulation")); }},
    {"bundling_share", [](Case const& c) { return bundling_share(static_cast<int>(c.number("bundle"))); }},
    {"awg_diameter", [](Case const& c) { return diameter(gauge(c)).value() / inch; }},
    {"awg_circular_mils", [](Case const& c) { return area(gauge(c)).value() / circular_mil; }},
    {"copper_resistance",
     [](Case const& c) { return per_length(c, copper_resistance(section(c), degrees(c, "temperature"))); }},
    {"tinned_resistance",
     [](Case const& c) {
         return per_length(c, copper_resistance(section(c), degrees(c, "temperature"))) * tinned_ratio(section(c));
     }},
    {"stranded_resistance",
     [](Case const& c) { return per_length(c, stranded_resistance(section(c), degrees(c, "temperature"))); }},
    {"tinned_wire_resistance",
     [](Case const& c) {
         auto const at = celsius(c.number("temperature", 20.0));
         return per_length(c, stranded_resistance(section(c), at)) * tinned_ratio(section(c));
     }},
    {"tinned_ratio", [](Case const& c) { return tinned_ratio(section(c)); }},
    {"resistance_change",
     [](Case const& c) {
         auto const area = 1e-6 * si::square_meter;
         return copper_resistance(area, degrees(c, "temperature")) / copper_resistance(area, celsius(75));
     }},
    {"temperature_correction",
     [](Case const& c) {
         auto const area = 1e-6 * si::square_meter;
         return copper_resistance(area, celsius(20)) / copper_resistance(area, degrees(c, "temperature"));
     }},
    {"wire_resistance",
     [](Case const& c) { return resistance(conductor(c), degrees(c, "temperature"), Resistance{}).value(); }},
    {"short_circuit_k", [](Case const& c) { return short_circuit_k(degrees(c, "initial"), degrees(c, "final")); }},
    {"adiabatic_time",
     [](Case const& c) {
         auto const k = short_circuit_k(degrees(c, "initial"), degrees(c, "final"));
         auto const heat = k * c.number("square_millimeters") / c.number("current");
         return heat * heat;
     }},
    {"allowed_drop",
     [](Case const& c) { return allowed_drop(volts(c, "system"), c.number("critical") > 0.0).value(); }},
    {"abyc_circular_mils",
     [](Case const& c) {
         return abyc_area(amperes(c, "current"), c.number("feet") * foot * si::meter, volts(c, "drop")).value() /
                circular_mil;
     }},
    {"formula_gauge",
     [](Case const& c) { // over the SAE areas; SAE has no 3
         for (int number = 18; number >= -3; --number) {
             if (!area(Sae{number})) continue;
             auto const lost = abyc_drop(amperes(c, "current"), c.number("feet") * foot * si::meter, Awg{number});
             if (lost <= allowed_drop(12.0 * si::volt, true)) return static_cast<double>(number);
         }
         return -4.0;
     }},
    {"sae_circular_mils", [](Case const& c) { return area(Sae{gauge(c).number})->value() / circular_mil; }},
    {"large_bank_need",
     [](Case const& c) {
         auto const makers = c.number("makers");
         return large_bank_need(amperes(c, "cranking"), c.number("ampere_hours") * 3600.0 * si::coulomb,
                                makers > 0.0 ? std::optional(amperes(c, "makers")) : std::nullopt)
             ->current.value();
     }},
    {"smallest_gauge", [](Case const& c) { return smallest_gauge(c.number("circular_mils")); }},
    {"iso_drop",
     [](Case const& c) {
         return iso_10133_drop(amperes(c, "current"), c.number("meters") * si::meter, section(c)).value();
     }},
    {"distance_limit",
     [](Case const& c) { return distance_limit(routing(c.word("routing"))).distance.value() / inch; }},
    {"cfr_rating_limit",
     [](Case const& c) { return cfr_rating_limit(amperes(c, "ampacity"), volts(c, "system")).rating.value(); }},
    {"interrupting_need",
     [](Case const& c) {
         auto const place = c.word("place") == "main" ? BreakerPlace::main : BreakerPlace::branch;
         return interrupting_need(amperes(c, "cranking"), volts(c, "system"), place).current.value();
     }},
    {"trip_at_least", [](Case const& c) { return band(c).at_least.value(); }},
    {"trip_at_most", [](Case const& c) { return band(c).at_most.value(); }},
    {"back_emf", [](Case const& c) { return running(c).back_emf.value(); }},
    {"motor_heat", [](Case const& c) { return running(c).heat.value(); }},
    {"motor_shaft", [](Case const& c) { return running(c).shaft.value(); }},
    {"motor_input", [](Case const& c) { return c.number("voltage") * running(c).drawn.value(); }},
    {"stall_current", [](Case const& c) { return stall_current(nameplate(c), volts(c, "voltage"))->value(); }},
    {"propeller_power_ratio", [](Case const& c) { return without_winding(c).shaft.value() / (36.0 * 50.0); }},
    {"propeller_thrust_ratio", [](Case const& c) { return without_winding(c).thrust; }},
};

} // namespace

double equipment_answer(Case const& c) { return answers.at(c.quantity)(c); }

} // namespace standards
