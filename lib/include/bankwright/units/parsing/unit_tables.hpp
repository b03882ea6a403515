// Which units may each quantity be written in? The one list that parsing, printing and the check against GNU units
// read. Factors to SI are exact decimals, factor x 10^power, so that a reading is rounded once. Sources: inch 25.4 mm,
// pound 0.45359237 kg, pound-force 4.4482216152605 N, horsepower 550 ft lbf/s: NIST SP 811, appendix B (from memory);
// checked against GNU units by tests/reference.
#pragma once

#include "bankwright/units/fractions.hpp"
#include "bankwright/units/quantities.hpp"
#include "bankwright/units/temperature.hpp"

#include <array>
#include <cstdint>
#include <span>
#include <string_view>

namespace bankwright {

struct Unit {
    std::string_view name;
    std::uint64_t factor; // SI units in one of these: factor x 10^power
    int power;
    bool prefixes = false; // also with m, u, µ, k, M in front
};

struct UnitTable {
    std::string_view noun;    // "a voltage"
    std::string_view example; // "36 V"
    std::span<Unit const> units;
    bool sums = false; // "5 ft 6 in", "1 h 30 min"
};

struct Prefix {
    std::string_view name;
    int power;
};
// The micro sign is in Unicode twice (U+00B5, and U+03BC that keyboards give).
inline constexpr std::array<Prefix, 6> prefixes{
    {{"m", -3}, {"u", -6}, {"\u00B5", -6}, {"\u03BC", -6}, {"k", 3}, {"M", 6}}};

namespace internal::unit_tables {

inline constexpr Unit voltage[] = {{"V", 1, 0, true}};
inline constexpr Unit current[] = {{"A", 1, 0, true}};
inline constexpr Unit resistance[] = {
    {"ohm", 1, 0, true}, {"\u03A9", 1, 0, true}, {"\u2126", 1, 0, true}}; // omega, ohm sign
inline constexpr Unit power[] = {{"W", 1, 0, true}, {"hp", 74569987158227022, -14}};
inline constexpr Unit energy[] = {{"J", 1, 0}, {"kJ", 1, 3}, {"MJ", 1, 6}, {"Wh", 36, 2}, {"kWh", 36, 5}};
inline constexpr Unit charge[] = {{"Ah", 36, 2}, {"mAh", 36, -1}, {"C", 1, 0}};
inline constexpr Unit length[] = {{"m", 1, 0},  {"cm", 1, -2},   {"mm", 1, -3},
                                  {"km", 1, 3}, {"in", 254, -4}, {"ft", 3048, -4}};
// A circular mil is the area of a circle one thousandth of an inch wide: pi/4 x (25.4 um)^2.
inline constexpr Unit area[] = {{"mm2", 1, -6},
                                {"mm\u00B2", 1, -6},
                                {"cm2", 1, -4},
                                {"cm\u00B2", 1, -4},
                                {"m2", 1, 0},
                                {"m\u00B2", 1, 0},
                                {"cmil", 5067074790974977514, -28},
                                {"kcmil", 5067074790974977514, -25}};
inline constexpr Unit duration[] = {{"s", 1, 0}, {"ms", 1, -3}, {"min", 60, 0}, {"h", 36, 2}, {"d", 864, 2}};
inline constexpr Unit mass[] = {{"kg", 1, 0}, {"g", 1, -3}, {"lb", 45359237, -8}, {"oz", 28349523125, -12}};
inline constexpr Unit force[] = {{"N", 1, 0}, {"kN", 1, 3}, {"lbf", 44482216152605, -13}};
inline constexpr Unit torque[] = {{"N m", 1, 0},
                                  {"Nm", 1, 0},
                                  {"N\u00B7m", 1, 0},
                                  {"lbf in", 1129848290276167, -16},
                                  {"lbf ft", 13558179483314004, -16}};
inline constexpr Unit angular_speed[] = {
    {"rad/s", 1, 0}, {"rpm", 10471975511965977462u, -20}, {"r/min", 10471975511965977462u, -20}};
inline constexpr Unit let_through[] = {{"A2 s", 1, 0}, {"A2s", 1, 0}, {"A\u00B2s", 1, 0}, {"A\u00B2 s", 1, 0}};
inline constexpr Unit resistance_per_length[] = {{"ohm/m", 1, 0, true},    {"ohm/km", 1, -3, true},
                                                 {"\u03A9/m", 1, 0, true}, {"\u03A9/km", 1, -3, true},
                                                 {"\u2126/m", 1, 0, true}, {"\u2126/km", 1, -3, true}};
inline constexpr Unit voltage_per_temperature[] = {
    {"V/K", 1, 0, true}, {"V/degC", 1, 0, true}, {"V/\u00B0C", 1, 0, true}};
inline constexpr Unit temperature_difference[] = {{"K", 1, 0}};
inline constexpr Unit fraction[] = {{"%", 1, -2}};
// A thermometer's scales have an offset beside the factor: parse() knows it.
inline constexpr Unit temperature[] = {{"degC", 1, 0},    {"\u00B0C", 1, 0}, {"\u2103", 1, 0}, {"degF", 1, 0},
                                       {"\u00B0F", 1, 0}, {"\u2109", 1, 0},  {"K", 1, 0}};
inline constexpr Unit gauge[] = {{"AWG", 1, 0}};

} // namespace internal::unit_tables

inline constexpr UnitTable voltage_units{"a voltage", "36 V", internal::unit_tables::voltage};
inline constexpr UnitTable current_units{"a current", "60 A", internal::unit_tables::current};
inline constexpr UnitTable resistance_units{"a resistance", "4.2 mohm", internal::unit_tables::resistance};
inline constexpr UnitTable power_units{"a power", "600 W", internal::unit_tables::power};
inline constexpr UnitTable energy_units{"an energy", "1200 Wh", internal::unit_tables::energy};
inline constexpr UnitTable charge_units{"a charge", "100 Ah", internal::unit_tables::charge};
inline constexpr UnitTable length_units{"a length", "17 ft", internal::unit_tables::length, true};
inline constexpr UnitTable area_units{"a cross-section", "16 mm2", internal::unit_tables::area};
inline constexpr UnitTable duration_units{"a duration", "3 h", internal::unit_tables::duration, true};
inline constexpr UnitTable mass_units{"a mass", "30 kg", internal::unit_tables::mass};
inline constexpr UnitTable force_units{"a force", "250 N", internal::unit_tables::force};
inline constexpr UnitTable torque_units{"a torque", "10 N m", internal::unit_tables::torque};
inline constexpr UnitTable angular_speed_units{"a rotational speed", "1500 rpm", internal::unit_tables::angular_speed};
inline constexpr UnitTable let_through_units{"a let-through I2t", "25000 A2 s", internal::unit_tables::let_through};
inline constexpr UnitTable resistance_per_length_units{"a resistance per length", "1.296 ohm/km",
                                                       internal::unit_tables::resistance_per_length};
inline constexpr UnitTable voltage_per_temperature_units{"a voltage per kelvin", "-5 mV/K",
                                                         internal::unit_tables::voltage_per_temperature};
inline constexpr UnitTable temperature_difference_units{"a temperature difference", "10 K",
                                                        internal::unit_tables::temperature_difference};
inline constexpr UnitTable fraction_units{"a percentage", "90 %", internal::unit_tables::fraction};
inline constexpr UnitTable temperature_units{"a temperature", "25 degC", internal::unit_tables::temperature};
inline constexpr UnitTable gauge_units{"a wire gauge", "6 AWG", internal::unit_tables::gauge};

// A unit of another quantity is recognized here, so that "36 A" is told from "36 X".
inline constexpr std::array<UnitTable const*, 20> every_unit_table{&voltage_units,
                                                                   &current_units,
                                                                   &resistance_units,
                                                                   &power_units,
                                                                   &energy_units,
                                                                   &charge_units,
                                                                   &length_units,
                                                                   &area_units,
                                                                   &duration_units,
                                                                   &mass_units,
                                                                   &force_units,
                                                                   &torque_units,
                                                                   &angular_speed_units,
                                                                   &let_through_units,
                                                                   &resistance_per_length_units,
                                                                   &voltage_per_temperature_units,
                                                                   &temperature_difference_units,
                                                                   &fraction_units,
                                                                   &temperature_units,
                                                                   &gauge_units};

// The table of a quantity; what is no quantity has none.
template <class Q>
struct UnitsOf;
template <>
struct UnitsOf<Voltage> {
    static constexpr UnitTable const& table = voltage_units;
};
template <>
struct UnitsOf<Current> {
    static constexpr UnitTable const& table = current_units;
};
template <>
struct UnitsOf<Resistance> {
    static constexpr UnitTable const& table = resistance_units;
};
template <>
struct UnitsOf<Power> {
    static constexpr UnitTable const& table = power_units;
};
template <>
struct UnitsOf<Energy> {
    static constexpr UnitTable const& table = energy_units;
};
template <>
struct UnitsOf<Charge> {
    static constexpr UnitTable const& table = charge_units;
};
template <>
struct UnitsOf<Length> {
    static constexpr UnitTable const& table = length_units;
};
template <>
struct UnitsOf<Area> {
    static constexpr UnitTable const& table = area_units;
};
template <>
struct UnitsOf<Duration> {
    static constexpr UnitTable const& table = duration_units;
};
template <>
struct UnitsOf<Mass> {
    static constexpr UnitTable const& table = mass_units;
};
template <>
struct UnitsOf<Force> {
    static constexpr UnitTable const& table = force_units;
};
template <>
struct UnitsOf<Torque> {
    static constexpr UnitTable const& table = torque_units;
};
template <>
struct UnitsOf<AngularSpeed> {
    static constexpr UnitTable const& table = angular_speed_units;
};
template <>
struct UnitsOf<LetThrough> {
    static constexpr UnitTable const& table = let_through_units;
};
template <>
struct UnitsOf<ResistancePerLength> {
    static constexpr UnitTable const& table = resistance_per_length_units;
};
template <>
struct UnitsOf<VoltagePerTemperature> {
    static constexpr UnitTable const& table = voltage_per_temperature_units;
};
template <>
struct UnitsOf<TemperatureDifference> {
    static constexpr UnitTable const& table = temperature_difference_units;
};
template <class Meaning>
struct UnitsOf<Fraction<Meaning>> {
    static constexpr UnitTable const& table = fraction_units;
};
template <>
struct UnitsOf<Temperature> {
    static constexpr UnitTable const& table = temperature_units;
};

} // namespace bankwright
