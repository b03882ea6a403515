// By which formulas do the small-craft standards reckon voltage drop, and how much do they allow? For comparison: the
// drop that bankwright reports comes from the solved network.
#pragma once

#include "bankwright/tables/voltage_drop.hpp"
#include "bankwright/units/quantities.hpp"

namespace bankwright {

// ABYC E-11: CM = 10.75 I L / E, L out and back in feet. The area that keeps the drop to `allowed`.
inline Area abyc_area(Current current, Length out_and_back, Voltage allowed) {
    auto const feet = out_and_back.value() / 0.3048;
    auto const circular_mils = tables::voltage_drop::abyc_formula[0].k * current.value() * feet / allowed.value();
    auto const circular_mil = 3.14159265358979323846 / 4.0 * 2.54e-5 * 2.54e-5; // [m2]
    return circular_mils * circular_mil * si::square_meter;
}

// ISO 10133: E = 0.0164 I L / S. Understates: its constant is 5 % below annealed copper at 20 degC.
inline Voltage iso_10133_drop(Current current, Length out_and_back, Area section) {
    auto const square_millimeters = section.value() * 1e6;
    return tables::voltage_drop::iso_formula[0].k * current.value() * out_and_back.value() / square_millimeters *
           si::volt;
}

// What ABYC E-11 lets a circuit lose: 3 % where it is critical (main feeders among them), 10 % elsewhere.
inline Voltage allowed_drop(Voltage system, bool critical) {
    return tables::voltage_drop::allowed[critical ? 0 : 1].share * system;
}

} // namespace bankwright
