// Numbers between 0 and 1 that share a dimension and nothing else: each meaning is its own type.
#pragma once

#include <compare>

namespace bankwright {

template <class Meaning>
class Fraction {
public:
    constexpr Fraction() = default;
    static constexpr Fraction of(double fraction) { return Fraction(fraction); }
    static constexpr Fraction percent(double percents) { return Fraction(percents / 100.0); }

    constexpr double value() const { return fraction_; } // 0..1
    constexpr double in_percent() const { return fraction_ * 100.0; }

    friend constexpr bool operator==(Fraction a, Fraction b) { return a.fraction_ == b.fraction_; }
    friend constexpr bool operator<(Fraction a, Fraction b) { return a.fraction_ < b.fraction_; }

private:
    explicit constexpr Fraction(double fraction) : fraction_(fraction) {}
    double fraction_ = 0.0;
};

using StateOfCharge = Fraction<struct StateOfChargeMeaning>;       // charge left over charge when full
using DepthOfDischarge = Fraction<struct DepthOfDischargeMeaning>; // its complement
using Health = Fraction<struct HealthMeaning>;                     // usable capacity over rated capacity
using Efficiency = Fraction<struct EfficiencyMeaning>;             // what comes out over what goes in
using Throttle = Fraction<struct ThrottleMeaning>;                 // duty cycle of a motor's speed control
using Spread = Fraction<struct SpreadMeaning>; // how far a value may lie to either side, over itself
using Ratio = Fraction<struct RatioMeaning>;   // a value over another of its kind; may well be above 1

} // namespace bankwright
