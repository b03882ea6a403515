// Quantities in C++ source: 12.8_V, 100_Ah, 4.2_mohm, 14_in, 25_degC, 98_pct, 16_mm2, 6_AWG, 00_AWG.
#pragma once

#include "bankwright/units/fractions.hpp"
#include "bankwright/units/quantities.hpp"
#include "bankwright/units/temperature.hpp"
#include "bankwright/units/wire_gauge.hpp"

#include <stdexcept>

namespace bankwright {

// A percentage of what is not said yet; becomes any Fraction.
struct Percentage {
    double percents;
    template <class Meaning>
    constexpr operator Fraction<Meaning>() const {
        return Fraction<Meaning>::percent(percents);
    }
};

namespace literals {
constexpr Voltage operator""_V(long double x) { return Voltage::from_value(static_cast<double>(x)); }
constexpr Voltage operator""_V(unsigned long long x) { return operator""_V(static_cast<long double>(x)); }
constexpr Voltage operator""_mV(long double x) { return Voltage::from_value(static_cast<double>(x / 1e3L)); }
constexpr Voltage operator""_mV(unsigned long long x) { return operator""_mV(static_cast<long double>(x)); }
constexpr Voltage operator""_kV(long double x) { return Voltage::from_value(static_cast<double>(x * 1e3L)); }
constexpr Voltage operator""_kV(unsigned long long x) { return operator""_kV(static_cast<long double>(x)); }
constexpr Current operator""_A(long double x) { return Current::from_value(static_cast<double>(x)); }
constexpr Current operator""_A(unsigned long long x) { return operator""_A(static_cast<long double>(x)); }
constexpr Current operator""_mA(long double x) { return Current::from_value(static_cast<double>(x / 1e3L)); }
constexpr Current operator""_mA(unsigned long long x) { return operator""_mA(static_cast<long double>(x)); }
constexpr Current operator""_kA(long double x) { return Current::from_value(static_cast<double>(x * 1e3L)); }
constexpr Current operator""_kA(unsigned long long x) { return operator""_kA(static_cast<long double>(x)); }
constexpr Resistance operator""_ohm(long double x) { return Resistance::from_value(static_cast<double>(x)); }
constexpr Resistance operator""_ohm(unsigned long long x) { return operator""_ohm(static_cast<long double>(x)); }
constexpr Resistance operator""_mohm(long double x) { return Resistance::from_value(static_cast<double>(x / 1e3L)); }
constexpr Resistance operator""_mohm(unsigned long long x) { return operator""_mohm(static_cast<long double>(x)); }
constexpr Resistance operator""_uohm(long double x) { return Resistance::from_value(static_cast<double>(x / 1e6L)); }
constexpr Resistance operator""_uohm(unsigned long long x) { return operator""_uohm(static_cast<long double>(x)); }
constexpr Resistance operator""_kohm(long double x) { return Resistance::from_value(static_cast<double>(x * 1e3L)); }
constexpr Resistance operator""_kohm(unsigned long long x) { return operator""_kohm(static_cast<long double>(x)); }
constexpr Power operator""_W(long double x) { return Power::from_value(static_cast<double>(x)); }
constexpr Power operator""_W(unsigned long long x) { return operator""_W(static_cast<long double>(x)); }
constexpr Power operator""_kW(long double x) { return Power::from_value(static_cast<double>(x * 1e3L)); }
constexpr Power operator""_kW(unsigned long long x) { return operator""_kW(static_cast<long double>(x)); }
constexpr Energy operator""_J(long double x) { return Energy::from_value(static_cast<double>(x)); }
constexpr Energy operator""_J(unsigned long long x) { return operator""_J(static_cast<long double>(x)); }
constexpr Energy operator""_Wh(long double x) { return Energy::from_value(static_cast<double>(x * 3600)); }
constexpr Energy operator""_Wh(unsigned long long x) { return operator""_Wh(static_cast<long double>(x)); }
constexpr Energy operator""_kWh(long double x) { return Energy::from_value(static_cast<double>(x * 3.6e6L)); }
constexpr Energy operator""_kWh(unsigned long long x) { return operator""_kWh(static_cast<long double>(x)); }
constexpr Charge operator""_Ah(long double x) { return Charge::from_value(static_cast<double>(x * 3600)); }
constexpr Charge operator""_Ah(unsigned long long x) { return operator""_Ah(static_cast<long double>(x)); }
constexpr Charge operator""_mAh(long double x) { return Charge::from_value(static_cast<double>(x * 3.6)); }
constexpr Charge operator""_mAh(unsigned long long x) { return operator""_mAh(static_cast<long double>(x)); }
constexpr Charge operator""_C(long double x) { return Charge::from_value(static_cast<double>(x)); }
constexpr Charge operator""_C(unsigned long long x) { return operator""_C(static_cast<long double>(x)); }
constexpr Length operator""_m(long double x) { return Length::from_value(static_cast<double>(x)); }
constexpr Length operator""_m(unsigned long long x) { return operator""_m(static_cast<long double>(x)); }
constexpr Length operator""_cm(long double x) { return Length::from_value(static_cast<double>(x / 1e2L)); }
constexpr Length operator""_cm(unsigned long long x) { return operator""_cm(static_cast<long double>(x)); }
constexpr Length operator""_mm(long double x) { return Length::from_value(static_cast<double>(x / 1e3L)); }
constexpr Length operator""_mm(unsigned long long x) { return operator""_mm(static_cast<long double>(x)); }
constexpr Length operator""_in(long double x) { return Length::from_value(static_cast<double>(x * 254 / 1e4L)); }
constexpr Length operator""_in(unsigned long long x) { return operator""_in(static_cast<long double>(x)); }
constexpr Length operator""_ft(long double x) { return Length::from_value(static_cast<double>(x * 3048 / 1e4L)); }
constexpr Length operator""_ft(unsigned long long x) { return operator""_ft(static_cast<long double>(x)); }
constexpr Area operator""_mm2(long double x) { return Area::from_value(static_cast<double>(x / 1e6L)); }
constexpr Area operator""_mm2(unsigned long long x) { return operator""_mm2(static_cast<long double>(x)); }
constexpr Area operator""_cm2(long double x) { return Area::from_value(static_cast<double>(x / 1e4L)); }
constexpr Area operator""_cm2(unsigned long long x) { return operator""_cm2(static_cast<long double>(x)); }
constexpr Area operator""_m2(long double x) { return Area::from_value(static_cast<double>(x)); }
constexpr Area operator""_m2(unsigned long long x) { return operator""_m2(static_cast<long double>(x)); }
constexpr Duration operator""_s(long double x) { return Duration::from_value(static_cast<double>(x)); }
constexpr Duration operator""_s(unsigned long long x) { return operator""_s(static_cast<long double>(x)); }
constexpr Duration operator""_min(long double x) { return Duration::from_value(static_cast<double>(x * 60)); }
constexpr Duration operator""_min(unsigned long long x) { return operator""_min(static_cast<long double>(x)); }
constexpr Duration operator""_h(long double x) { return Duration::from_value(static_cast<double>(x * 3600)); }
constexpr Duration operator""_h(unsigned long long x) { return operator""_h(static_cast<long double>(x)); }
constexpr Duration operator""_d(long double x) { return Duration::from_value(static_cast<double>(x * 86400)); }
constexpr Duration operator""_d(unsigned long long x) { return operator""_d(static_cast<long double>(x)); }
constexpr Mass operator""_kg(long double x) { return Mass::from_value(static_cast<double>(x)); }
constexpr Mass operator""_kg(unsigned long long x) { return operator""_kg(static_cast<long double>(x)); }
constexpr Mass operator""_g(long double x) { return Mass::from_value(static_cast<double>(x / 1e3L)); }
constexpr Mass operator""_g(unsigned long long x) { return operator""_g(static_cast<long double>(x)); }
constexpr Mass operator""_lb(long double x) { return Mass::from_value(static_cast<double>(x * 45359237 / 1e8L)); }
constexpr Mass operator""_lb(unsigned long long x) { return operator""_lb(static_cast<long double>(x)); }
constexpr Force operator""_N(long double x) { return Force::from_value(static_cast<double>(x)); }
constexpr Force operator""_N(unsigned long long x) { return operator""_N(static_cast<long double>(x)); }
constexpr Force operator""_lbf(long double x) { return Force::from_value(static_cast<double>(x * 4.4482216152605)); }
constexpr Force operator""_lbf(unsigned long long x) { return operator""_lbf(static_cast<long double>(x)); }
constexpr Torque operator""_Nm(long double x) { return Torque::from_value(static_cast<double>(x)); }
constexpr Torque operator""_Nm(unsigned long long x) { return operator""_Nm(static_cast<long double>(x)); }
constexpr Torque operator""_lbf_in(long double x) {
    return Torque::from_value(static_cast<double>(x * 0.1129848290276167));
}
constexpr Torque operator""_lbf_in(unsigned long long x) { return operator""_lbf_in(static_cast<long double>(x)); }
constexpr AngularSpeed operator""_rpm(long double x) {
    return AngularSpeed::from_value(static_cast<double>(x * 0.10471975511965977462));
}
constexpr AngularSpeed operator""_rpm(unsigned long long x) { return operator""_rpm(static_cast<long double>(x)); }
constexpr TemperatureDifference operator""_K(long double x) {
    return TemperatureDifference::from_value(static_cast<double>(x));
}
constexpr TemperatureDifference operator""_K(unsigned long long x) { return operator""_K(static_cast<long double>(x)); }

inline Temperature operator""_degC(long double x) { return celsius(static_cast<double>(x)); }
inline Temperature operator""_degC(unsigned long long x) { return celsius(static_cast<double>(x)); }
inline Temperature operator""_degF(long double x) { return fahrenheit(static_cast<double>(x)); }
inline Temperature operator""_degF(unsigned long long x) { return fahrenheit(static_cast<double>(x)); }
constexpr Percentage operator""_pct(long double x) { return {static_cast<double>(x)}; }
constexpr Percentage operator""_pct(unsigned long long x) { return {static_cast<double>(x)}; }

// 6_AWG; the trade's 2/0 is 00_AWG, and so on to 0000_AWG.
constexpr Awg operator""_AWG(char const* digits) {
    int number = 0, zeros = 0;
    for (char const* c = digits; *c != '\0'; ++c) {
        if (*c < '0' || *c > '9' || number > 40) throw std::invalid_argument("a gauge is a whole number up to 40");
        if (number == 0 && *c == '0') ++zeros;
        number = number * 10 + (*c - '0');
    }
    return Awg{number > 0 ? number : 1 - zeros};
}

} // namespace literals

} // namespace bankwright
