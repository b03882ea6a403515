// By which formulas do the small-craft standards reckon voltage drop, and how much do they allow? For comparison: the
// drop that bankwright reports comes from the solved network.
#pragma once

#include "bankwright/tables/voltage_drop.hpp"
#include "bankwright/units/quantities.hpp"
#include "bankwright/units/wire_gauge.hpp"

namespace bankwright {

// ABYC E-11: CM = 10.75 I L / E, L out and back in feet. The area that keeps the drop to `allowed`.
inline Area abyc_area(Current current, Length out_and_back, Voltage allowed) {
    auto const feet = out_and_back.value() / 0.3048;
    auto const circular_mils = tables::voltage_drop::abyc_formula[0].k * current.value() * feet / allowed.value();
    return circular_mils * circular_mil * si::square_meter;
}

// The drop in one conductor by the same formula. A gauge counts as the SAE size of its number, which may hold up to 12
// % less copper: the standard's printed tables are made "on minimum CM area", so nothing by them comes out thinner
// (quoted: a chandler's reprint, Tables IX and X). K stands for copper at about 30 degC.
inline Voltage abyc_drop(Current current, Length length, WireSize size) {
    auto area = size.area();
    if (auto const gauge = size.gauge())
        if (auto const least = bankwright::area(Sae{gauge->number})) area = *least;
    return tables::voltage_drop::abyc_formula[0].k * current.value() * length.value() / 0.3048 /
           (area.value() / circular_mil) * si::volt;
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
