#include "standards/device_answers.hpp"

#include "bankwright/devices/battery_capacity.hpp"
#include "bankwright/devices/battery_gravity.hpp"
#include "bankwright/devices/battery_recovery.hpp"
#include "bankwright/devices/battery_resistance.hpp"
#include "bankwright/devices/battery_voltage.hpp"
#include "standards/course_answers.hpp"
#include "standards/equipment_answers.hpp"

#include <functional>

namespace standards {
namespace {

using namespace bankwright;
using Answers = std::map<std::string, std::function<double(Case const&)>>;

constexpr double ampere_hour = 3600.0; // [C]
constexpr double hour = 3600.0;        // [s]
double fahrenheit_of(Temperature t) { return in_celsius(t) * 1.8 + 32.0; }
Temperature at_77() { return fahrenheit(77); }

Battery twelve_volts(Case const& c) {
    Battery battery;
    battery.voltage = 12.0 * si::volt;
    battery.chemistry = chemistry_named(c.words.count("chemistry") ? c.word("chemistry") : "flooded");
    if (c.numbers.count("capacity")) battery.capacity = c.number("capacity") * ampere_hour * si::coulomb;
    if (c.numbers.count("cranking")) battery.cranking = c.number("cranking") * si::ampere;
    if (c.numbers.count("reserve")) battery.reserve = c.number("reserve") * 60.0 * si::second;
    return battery;
}

Duration peukert(Case const& c, double amperes) {
    return peukert_time(c.number("capacity") * ampere_hour * si::coulomb, c.number("rated_hours") * hour * si::second,
                        c.number("exponent"), amperes * si::ampere);
}

MeterAccuracy meter(Case const& c) {
    return {c.number("percent") / 100.0, static_cast<int>(c.number("counts")), c.number("digit") * si::volt};
}

Answers const battery_answers{
    {"open_circuit_voltage",
     [](Case const& c) {
         return open_circuit_voltage(twelve_volts(c), StateOfCharge::percent(c.number("charge")),
                                     fahrenheit(c.number("fahrenheit")))
             .value();
     }},
    {"cell_voltage",
     [](Case const& c) {
         return open_circuit_cell_voltage(*chemistry_named(c.word("chemistry")),
                                          StateOfCharge::of(c.number("charge_fraction")), at_77())
             .value();
     }},
    {"gravity_at_80",
     [](Case const& c) { return gravity_at_80_fahrenheit(c.number("gravity"), fahrenheit(c.number("fahrenheit"))); }},
    {"specific_gravity",
     [](Case const& c) {
         return specific_gravity(StateOfCharge::percent(c.number("charge")), fahrenheit(c.number("fahrenheit")));
     }},
    {"gravity_voltage",
     [](Case const& c) { return c.number("cells") * cell_voltage_from_gravity(c.number("gravity")).value(); }},
    {"freezing_point", [](Case const& c) { return fahrenheit_of(freezing_point(c.number("gravity"))); }},
    {"cranking_power",
     [](Case const& c) {
         return resistance_ratio(Chemistry::flooded, fahrenheit(80)) /
                resistance_ratio(Chemistry::flooded, fahrenheit(c.number("fahrenheit")));
     }},
    {"voltage_at_cranking",
     [](Case const& c) {
         auto const battery = twelve_volts(c);
         Voltage const lost = *battery.cranking * internal_resistance(battery, celsius(-18));
         return open_circuit_voltage(battery, celsius(-18)).value() - lost.value();
     }},
    {"resistance_at_minus_18",
     [](Case const& c) { return 1e3 * internal_resistance(twelve_volts(c), celsius(-18)).value(); }},
    {"resistance_by_capacity",
     [](Case const& c) { return 1e3 * internal_resistance(twelve_volts(c), celsius(25)).value(); }},
    {"cell_milliohms",
     [](Case const& c) {
         auto cell = twelve_volts(c);
         cell.voltage = 2.0 * si::volt;
         return 1e3 * internal_resistance(cell, celsius(25)).value();
     }},
    {"hours_at",
     [](Case const& c) {
         // SAE J537 has the reserve at 80 degF; the capacity is of 25 degC
         auto const reserve = c.numbers.count("reserve") > 0 && c.number("current") == 25.0;
         auto const at = reserve ? fahrenheit(80) : celsius(25);
         return time_to_empty(twelve_volts(c), c.number("current") * si::ampere, at).value() / hour;
     }},
    {"lead_capacity_factor",
     [](Case const& c) { return 1.0 / capacity_ratio(Chemistry::flooded, fahrenheit(c.number("fahrenheit"))); }},
    {"lead_capacity_ratio",
     [](Case const& c) { return capacity_ratio(Chemistry::flooded, celsius(c.number("celsius"))); }},
    {"exponent",
     [](Case const& c) {
         return peukert_exponent(c.number("hours_1") * hour * si::second, c.number("amperes_1") * si::ampere,
                                 c.number("hours_2") * hour * si::second, c.number("amperes_2") * si::ampere);
     }},
    {"peukert_hours", [](Case const& c) { return peukert(c, c.number("current")).value() / hour; }},
    {"peukert_capacity",
     [](Case const& c) { return c.number("current") * peukert(c, c.number("current")).value() / hour; }},
    {"peukert_ratio",
     [](Case c) {
         c.numbers["capacity"] = 186.0;
         c.numbers["rated_hours"] = 20.0;
         return peukert(c, 93.0) / peukert(c, 186.0);
     }},
    {"meter_error", [](Case const& c) { return meter_error(meter(c), c.number("reading") * si::volt).value(); }},
    {"charge_uncertainty",
     [](Case const& c) {
         Battery battery = twelve_volts(c);
         auto const found = charge_from_voltage(battery, c.number("reading") * si::volt, fahrenheit(80));
         return 50.0 * (found.high.value() - found.low.value());
     }},
};

} // namespace

double device_answer(Case const& c) {
    if (asks_for_a_course(c)) return course_answer(c);
    auto const found = battery_answers.find(c.quantity);
    return found != battery_answers.end() ? found->second(c) : equipment_answer(c);
}

} // namespace standards
