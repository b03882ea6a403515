// How long does a battery last, and how much does it give, at a current and a temperature?
//
// Peukert's law in its rated form: t = R (C / (I R))^n, C being the R-hour capacity (Peukert 1897). Never C / I^n: that
// takes the rated capacity for the capacity at one ampere and loses a quarter of the time of a 100 Ah battery.
#pragma once

#include "bankwright/devices/battery.hpp"
#include "bankwright/tables/source.hpp"

namespace bankwright {

// `capacity`; throws std::invalid_argument naming it. It is the charge given in rated_time.
Charge rated_capacity(Battery const&);
Duration rated_time(Battery const&); // `capacity_hours`, else 20 h

// Time to empty at a constant current, from full, at any current > 0. The law holds for a narrow range of currents
// around its two ratings and a constant temperature (Omar et al., Energies 2013, 6, 5625).
Duration peukert_time(Charge capacity, Duration rated, double exponent, Current);

// The exponent that two tests of one battery show: n = ln(t2 / t1) / ln(i1 / i2).
double peukert_exponent(Duration t1, Current i1, Duration t2, Current i2);

// From the rated capacity and the reserve minutes (25 A at 80 degF), kept within 1..2; without `reserve` the usual one
// of the chemistry; 1 where neither is known.
double peukert_exponent(Battery const&);
Source peukert_source(Battery const&);

// The `reserve` from which that comes to so much. The two ratings must lie apart: where the battery's rated current is
// about 25 A nothing tells an exponent.
Duration reserve_at_exponent(Battery const&, double exponent);

// Of a chemistry, where no second rating tells it: the one that is taken, and the usual range.
struct UsualExponent {
    double usual, low, high;
};
UsualExponent usual_exponent(Chemistry);

// Share of the rated capacity that is there at a temperature; 1 at 25 degC. Lead-acid by IEEE 485 from -3.9 to 51.7
// degC and held beyond, lithium by common practice and never more than 1.
double capacity_ratio(Chemistry, Temperature);

// What a full battery gives at a constant current until it is empty: rated capacity x health x temperature, less what a
// current above the rated one costs. Below the rated current it counts the rated capacity: more is not promised.
Charge usable_capacity(Battery const&, Current, Temperature ambient);

// By how much the level at hand may fall below nothing, over the capacity: what a discharge slower than the rated one
// would still find [common practice: a lead-acid battery gives about a tenth more over 100 hours than over 20].
constexpr double deep_charge(Chemistry chemistry) { return is_lithium(chemistry) ? 0.0 : 0.1; }

// The same for whoever asks very often: all that does not depend on the current, worked out once.
struct DischargeLaw {
    Charge full{};    // at the rated current and below it
    Duration rated{}; // over which it gives that
    double exponent = 1.0;
    double deep = 0.0; // of the capacity, as battery_recovery.hpp has it
    Current rated_current() const { return full / rated; }
};
DischargeLaw discharge_law(Battery const&, Temperature ambient);
Charge usable_capacity(DischargeLaw const&, Current);

// Charge left after standing: an equal share lost each month, twice as fast for every 10 K above 25 degC [from memory].
StateOfCharge charge_after_standing(Chemistry, StateOfCharge, Duration, Temperature);

// Charge given back over charge put in.
Efficiency coulombic_efficiency(Chemistry);

} // namespace bankwright

#include "bankwright/linkage.hpp"
#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/devices/battery_capacity_inl.hpp"
#endif
