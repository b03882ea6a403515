// The functions of the trade as Python asks them, one bank's worth of numbers at a time: SI doubles in and out, since
// NumPy's arrays hold those. module.cpp spreads each over arrays. Nothing here knows of Python. They throw
// std::invalid_argument for a value out of its range, and NaN stands where a table ends and so has no answer.
#pragma once

#include <string>
#include <vector>

namespace bankwright::python::physics {

// area [m2], temperatures [K], length [m], current [A]
double thinnest_gauge(double area);                                                             // NaN above 4/0
double ampacity(double area, double insulation, double ambient, bool engine_space, int bundle); // [A]
double wire_resistance(double area, double length, double temperature, bool tinned);            // [ohm]
double wire_temperature(double area, double current, double insulation, double ambient, bool engine_space,
                        int bundle); // [K]
double voltage_drop(double area, double length, double current, double insulation, double ambient,
                    bool tinned);                                                   // [V]
double withstand(double area, double insulation);                                   // [A2 s]
double withstand_time(double area, double current, double insulation);              // [s]
double trip_at_least(std::string const& trip_class, double rating, double current); // [s]
double trip_at_most(std::string const& trip_class, double rating, double current);  // [s]
std::vector<std::string> trip_classes();

// charge 0..1, nominal voltage [V], temperature [K]
double rested_voltage(std::string const& chemistry, double charge, double nominal, double temperature);   // [V]
double charge_at_voltage(std::string const& chemistry, double volts, double nominal, double temperature); // 0..1
double specific_gravity(double charge, double temperature);                                               // 1
double gravity_at_80(double gravity, double temperature);                                                 // 1
double freezing_point(double gravity);                                                                    // [K]
double usual_exponent(std::string const& chemistry);                                                      // 1
double exponent(double capacity, double hours, double reserve);                                           // 1
double usable_capacity(double current, double capacity, double hours, double exponent, double share);     // [C]
double capacity_ratio(std::string const& chemistry, double temperature);                                  // 1
double motor_current(double volts, double nameplate_volts, double nameplate_current, double winding,
                     double throttle); // [A]

} // namespace bankwright::python::physics
