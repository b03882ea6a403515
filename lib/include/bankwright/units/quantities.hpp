// The quantities that every public door of bankwright speaks: Boost.Units, SI inside, never made from a bare double.
// `.value()` is the number in the SI unit named beside the type.
#pragma once

#include <boost/units/quantity.hpp>
#include <boost/units/systems/si/angular_velocity.hpp>
#include <boost/units/systems/si/area.hpp>
#include <boost/units/systems/si/conductance.hpp>
#include <boost/units/systems/si/current.hpp>
#include <boost/units/systems/si/electric_charge.hpp>
#include <boost/units/systems/si/electric_potential.hpp>
#include <boost/units/systems/si/energy.hpp>
#include <boost/units/systems/si/force.hpp>
#include <boost/units/systems/si/length.hpp>
#include <boost/units/systems/si/mass.hpp>
#include <boost/units/systems/si/power.hpp>
#include <boost/units/systems/si/resistance.hpp>
#include <boost/units/systems/si/temperature.hpp>
#include <boost/units/systems/si/time.hpp>
#include <boost/units/systems/si/torque.hpp>

namespace bankwright {

namespace si = boost::units::si;

using Voltage = boost::units::quantity<si::electric_potential>;    // [V]
using Current = boost::units::quantity<si::current>;               // [A]
using Resistance = boost::units::quantity<si::resistance>;         // [ohm]
using Power = boost::units::quantity<si::power>;                   // [W]
using Energy = boost::units::quantity<si::energy>;                 // [J]
using Charge = boost::units::quantity<si::electric_charge>;        // [C]; 1 Ah = 3600 C
using Length = boost::units::quantity<si::length>;                 // [m]
using Area = boost::units::quantity<si::area>;                     // [m2]; 1 mm2 = 1e-6 m2
using Duration = boost::units::quantity<si::time>;                 // [s]
using Mass = boost::units::quantity<si::mass>;                     // [kg]
using Force = boost::units::quantity<si::force>;                   // [N]
using Torque = boost::units::quantity<si::torque>;                 // [N m / rad]
using AngularSpeed = boost::units::quantity<si::angular_velocity>; // [rad/s]
using LetThrough = boost::units::quantity<                         // [A2 s]: I2t of a fault
    boost::units::multiply_typeof_helper<
        boost::units::power_typeof_helper<si::current, boost::units::static_rational<2>>::type, si::time>::type>;
using ResistancePerLength = // [ohm/m]
    boost::units::quantity<boost::units::divide_typeof_helper<si::resistance, si::length>::type>;
using VoltagePerTemperature = // [V/K]
    boost::units::quantity<boost::units::divide_typeof_helper<si::electric_potential, si::temperature>::type>;

} // namespace bankwright
