// A temperature is a point, a temperature difference is not: two types that do not mix by accident.
#pragma once

#include "bankwright/units/quantities.hpp"

#include <boost/units/absolute.hpp>

namespace bankwright {

using Temperature = boost::units::quantity<boost::units::absolute<si::temperature>>; // a point [K]
using TemperatureDifference = boost::units::quantity<si::temperature>;               // [K]

constexpr TemperatureDifference kelvins(double difference) { return difference * si::kelvin; }

inline Temperature kelvin_point(double kelvin) { return kelvin * boost::units::absolute<si::temperature>(); }
inline Temperature celsius(double degrees) { return kelvin_point(degrees + 273.15); }
inline Temperature fahrenheit(double degrees) { return celsius((degrees - 32.0) / 1.8); }

// The number on a Celsius thermometer.
inline double in_celsius(Temperature t) { return t.value() - 273.15; }

} // namespace bankwright
