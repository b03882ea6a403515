// Each function of the trade, behind a check of its ranges: those of the keys of a bank file, where there is such a
// key.
#include "physics.hpp"

#include "bankwright/config/keys.hpp"
#include "bankwright/devices/battery_capacity.hpp"
#include "bankwright/devices/battery_gravity.hpp"
#include "bankwright/devices/battery_voltage.hpp"
#include "bankwright/devices/conductor_ampacity.hpp"
#include "bankwright/devices/conductor_heating.hpp"
#include "bankwright/devices/conductor_resistance.hpp"
#include "bankwright/devices/motor_propeller.hpp"
#include "bankwright/devices/protection_trip.hpp"
#include "bankwright/units/print.hpp"

#include <cmath>
#include <limits>
#include <stdexcept>

namespace bankwright::python::physics {

namespace {

constexpr double none = std::numeric_limits<double>::quiet_NaN();
constexpr Range gravities{1.0, 1.4};
constexpr Range distances{0.0, 1e6, true}; // [m] not a boat's alone

// A number that is not known, NaN, goes through: what follows of it is not known either.
template <class Printed>
void allow(char const* name, double value, Range const& range, Printed printed) {
    if (std::isnan(value) || range.holds(value)) return;
    auto const least = (range.above_least ? "more than " : "from ") + printed(range.least);
    throw std::invalid_argument("`" + std::string(name) + "` is " + printed(value) + "; allowed is " + least +
                                (range.above_least ? ", at most " : " to ") + printed(range.most));
}
template <class Q>
Q quantity(char const* name, double value, Range const& range) {
    allow(name, value, range, [](double v) { return print(parsing::FromSI<Q>::make(v)); });
    return Q::from_value(value);
}
double plain(char const* name, double value, Range const& range) {
    allow(name, value, range, [](double v) {
        auto text = std::to_string(v);
        text.erase(text.find_last_not_of('0') + 1);
        return text.back() == '.' ? text.substr(0, text.size() - 1) : text;
    });
    return value;
}

Temperature temperature(char const* name, double kelvin, Range const& range = keys::weather) {
    allow(name, kelvin, range, [](double v) { return print(kelvin_point(v)); });
    return kelvin_point(kelvin);
}
Area section(double area) { return quantity<Area>("size", area, keys::copper_area); }
Length length_of(double meters) { return quantity<Length>("length", meters, distances); }
Current current_of(double amperes) { return quantity<Current>("current", amperes, keys::amperes); }
Voltage nominal_of(double volts) { return quantity<Voltage>("nominal", volts, keys::volts); }
StateOfCharge charge_of(double share) {
    allow("charge", share, keys::part_of_whole, [](double v) { return print(StateOfCharge::of(v)); });
    return StateOfCharge::of(std::isnan(share) ? 0.0 : share);
}

Conductor wire(double area, double insulation) {
    Conductor wire;
    wire.size = section(area);
    wire.insulation = temperature("insulation", insulation, keys::copper);
    return wire;
}
Conductor wire(double area, double insulation, bool engine_space, int bundle) {
    auto one = wire(area, insulation);
    one.engine_space = engine_space;
    one.bundle = static_cast<int>(plain("bundle", bundle, keys::one_or_more));
    return one;
}

Chemistry chemistry_of(std::string const& word) {
    if (auto const known = chemistry_named(word)) return *known;
    std::string all;
    for (auto const one : chemistry_names)
        all += (all.empty() ? "`" : ", `") + std::string(one) + "`";
    throw std::invalid_argument("`chemistry` is `" + word + "`; allowed is one of " + all);
}
Battery battery_of(std::string const& chemistry, double nominal) {
    Battery battery;
    battery.chemistry = chemistry_of(chemistry);
    battery.voltage = nominal_of(nominal);
    return battery;
}

template <class Optional>
double or_none(Optional const& value) {
    return value ? value->value() : none;
}

TripBand band(std::string const& trip_class, double rating, double current) {
    if (!trip_class_named(trip_class))
        throw std::invalid_argument("`trip_class` is `" + trip_class + "`; trip_classes() lists those known");
    ProtectiveDevice device;
    device.trip_class = trip_class;
    device.rating = quantity<Current>("rating", rating, keys::amperes);
    return trip_band(device, quantity<Current>("current", current, keys::amperes_or_none)).value();
}

} // namespace

double thinnest_gauge(double area) {
    constexpr double rounding = 1e-9;
    auto const gauge = bankwright::thinnest_gauge(section(area) * (1.0 - rounding));
    return gauge ? static_cast<double>(gauge->number) : none;
}

double ampacity(double area, double insulation, double ambient, bool engine_space, int bundle) {
    auto const found =
        bankwright::ampacity(wire(area, insulation, engine_space, bundle), temperature("ambient", ambient));
    return found ? found->current.value() : none;
}

double wire_resistance(double area, double length, double temperature_, bool tinned) {
    Conductor one;
    one.size = section(area);
    one.length = length_of(length);
    one.tinned = tinned;
    return or_none(bankwright::wire_resistance(one, temperature("temperature", temperature_, keys::copper)));
}

double wire_temperature(double area, double current, double insulation, double ambient, bool engine_space, int bundle) {
    return or_none(conductor_temperature(wire(area, insulation, engine_space, bundle), current_of(current),
                                         temperature("ambient", ambient)));
}

double voltage_drop(double area, double length, double current, double insulation, double ambient, bool tinned) {
    auto one = wire(area, insulation);
    one.length = length_of(length);
    one.tinned = tinned;
    return conductor_drop(one, current_of(current), temperature("ambient", ambient), Resistance{}).value();
}

double withstand(double area, double insulation) { return or_none(bankwright::withstand(wire(area, insulation))); }

double withstand_time(double area, double current, double insulation) {
    return or_none(bankwright::withstand_time(wire(area, insulation), current_of(current)));
}

double trip_at_least(std::string const& trip_class, double rating, double current) {
    return band(trip_class, rating, current).at_least.value();
}
double trip_at_most(std::string const& trip_class, double rating, double current) {
    return band(trip_class, rating, current).at_most.value();
}
std::vector<std::string> trip_classes() { return {trip_class_names.begin(), trip_class_names.end()}; }

double rested_voltage(std::string const& chemistry, double charge, double nominal, double temperature_) {
    auto const battery = battery_of(chemistry, nominal);
    auto const at = charge_of(charge);
    return std::isnan(charge) ? none
                              : open_circuit_voltage(battery, at, temperature("temperature", temperature_)).value();
}

double charge_at_voltage(std::string const& chemistry, double volts, double nominal, double temperature_) {
    auto const reading = quantity<Voltage>("volts", volts, keys::volts_or_none);
    if (std::isnan(volts)) return none;
    return charge_from_voltage(battery_of(chemistry, nominal), reading, temperature("temperature", temperature_))
        .best.value();
}

double specific_gravity(double charge, double temperature_) {
    auto const at = charge_of(charge);
    return std::isnan(charge) ? none : bankwright::specific_gravity(at, temperature("temperature", temperature_));
}

double gravity_at_80(double gravity, double temperature_) {
    return gravity_at_80_fahrenheit(plain("gravity", gravity, gravities), temperature("temperature", temperature_));
}

double freezing_point(double gravity) {
    if (std::isnan(gravity)) return none;
    return bankwright::freezing_point(plain("gravity", gravity, gravities)).value();
}

double usual_exponent(std::string const& chemistry) {
    return bankwright::usual_exponent(chemistry_of(chemistry)).usual;
}

double exponent(double capacity, double hours, double reserve) {
    constexpr double reserve_amperes = 25.0; // SAE J537
    auto const rated = quantity<Charge>("capacity", capacity, keys::coulombs);
    auto const time = quantity<Duration>("hours", hours, keys::seconds);
    return peukert_exponent(time, rated / time, quantity<Duration>("reserve", reserve, keys::seconds),
                            reserve_amperes * si::ampere);
}

double usable_capacity(double current, double capacity, double hours, double exponent, double share) {
    DischargeLaw law;
    law.full = quantity<Charge>("capacity", capacity, keys::coulombs) * share;
    law.rated = quantity<Duration>("hours", hours, keys::seconds);
    law.exponent = plain("exponent", exponent, {1.0, 2.0});
    return bankwright::usable_capacity(law, current_of(current)).value();
}

double capacity_ratio(std::string const& chemistry, double temperature_) {
    return bankwright::capacity_ratio(chemistry_of(chemistry), temperature("temperature", temperature_));
}

double motor_current(double volts, double nameplate_volts, double nameplate_current, double winding, double throttle) {
    Motor motor;
    motor.id = "motor";
    motor.voltage = quantity<Voltage>("rated_voltage", nameplate_volts, keys::volts);
    motor.current = quantity<Current>("rated_current", nameplate_current, keys::amperes);
    motor.winding = quantity<Resistance>("winding", winding, keys::ohms_or_none);
    auto const seen = quantity<Voltage>("voltage", volts, keys::volts_or_none);
    allow("throttle", throttle, keys::part_of_whole, [](double v) { return print(Throttle::of(v)); });
    if (std::isnan(volts) || std::isnan(throttle)) return none;
    return motor_state(motor, seen, Throttle::of(throttle)).drawn.value();
}

} // namespace bankwright::python::physics
