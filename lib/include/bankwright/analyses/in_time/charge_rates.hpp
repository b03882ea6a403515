// How fast does every battery's charge move at the current it carries, and how fast does what is at hand fall behind?
//
// What flows out is what the charge loses, of what flows in its coulombic efficiency is kept; the lag of the level at
// hand grows with a discharge and dies away (devices/battery_recovery.hpp). Its growth is asked for at currents that
// hardly differ from one moment to the next, so it stands as polynomials between currents a tenth apart, as good as the
// law to a few parts in a hundred million.
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

    // All padded as CurveLanes says.
    struct Now {
        double const* amperes; // [A] by battery, positive when it discharges
        double const* charges; // [1]
        double const* lags;    // [1]
    };
    // [1/s] of the states of charge, negative when they discharge, and of the lags.
    void at(Now const& now, double* charge_rates, double* lag_rates);

    // How the rates of one battery follow its own current and charge, all else being as it is. The lag's own is
    // -recovery_rate.
    struct Slopes {
        double charge_by_amperes; // [1/C]
        double lag_by_amperes;    // [1/C]
        double charge_by_charge;  // [1/s]
    };
    Slopes slopes_at(std::size_t battery, double amperes, double charge) const;

private:
    static constexpr std::size_t degree = 4;
    using Lanes = solver::CurveLanes<degree>;
    Lanes::Piece piece_at(std::size_t battery, double amperes) const;

    Bank const& bank_;
    bool charging_;
    std::vector<DischargeLaw> laws_; // by battery
    std::vector<double> given_;      // [1/C] of the charge by what flows out
    std::vector<double> kept_;       // [1/C] by what flows in
    Lanes lanes_;
};

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/in_time/charge_rates_inl.hpp"
#endif
