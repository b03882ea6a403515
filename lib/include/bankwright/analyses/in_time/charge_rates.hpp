// How fast does every battery's charge move at the current it carries?
//
// Peukert's law for what it gives (devices/battery_capacity.hpp), its coulombic efficiency for what it takes. The law's
// power is asked for at currents that hardly differ from one moment to the next, so it stands as the binomial series
// about one of them, (1 + u)^n, whose eleventh term is below rounding for |u| up to a sixteenth.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/devices/battery_capacity.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/solver/curve_lanes.hpp"

#include <cstddef>
#include <vector>

namespace bankwright {

class ChargeRates {
public:
    // `bank` must outlive it. `charging`: a charger's current near full goes partly into gas.
    ChargeRates(Bank const& bank, bool charging);

    // [1/s] of the state of charge by battery, negative when it discharges, at these `amperes` [A], positive when it
    // discharges, and states of charge. All three padded as CurveLanes says.
    void at(double const* amperes, double const* charges, double* rates);

private:
    static constexpr std::size_t degree = 10;
    using Lanes = solver::CurveLanes<degree>;
    Lanes::Piece piece_at(std::size_t battery, double amperes) const;

    Bank const& bank_;
    bool charging_;
    std::vector<DischargeLaw> laws_; // by battery
    Lanes lanes_;
};

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/in_time/charge_rates_inl.hpp"
#endif
