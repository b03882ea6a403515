// One load of constant power behind one resistance, asked again and again while the voltage goes on as it went: through
// time, say. Whoever steps waits for a root and a division each time; so where the voltage is about to be is foreseen,
// and what the load draws there is found while the voltage itself is still being summed up.
//
// Method. From V I - R I^2 = P follow, with D = V - 2 R I = sqrt(V^2 - 4 R P): dI/dV = -I / D and
// d2I/dV2 = 2 I' (R I' - 1) / D. Around the foreseen voltage the current is its Taylor polynomial of the second degree,
// and that only where what the third would add, (V' - V) V / D^2 cubed at most, lies below rounding.
#pragma once

#include "bankwright/solver/loads/port_formula.hpp"

#include <cmath>
#include <limits>

namespace bankwright::solver {

class PowerPort {
public:
    PowerPort(ConstantPower law, double ohms) : law_(law), ohms_(ohms) {}

    double foreseen() const { return foreseen_; } // [V]

    // [A] as current_from gives it, for an open-circuit voltage `off` [V] above the one foreseen; but for rounding of
    // the largest of the last three voltages.
    __attribute__((always_inline)) double amps(double off) {
        double const volts = foreseen_ + off;
        double drawn = at_foreseen_ + off * (slope_ + off * bend_);
        if (!(std::abs(off) * foreseen_ < reach_)) {
            drawn = current_from(law_, volts, ohms_);
            if (!std::isfinite(volts)) return *this = PowerPort(law_, ohms_), drawn; // nothing to go on from
        }
        foresee(2.0 * volts - last_);
        last_ = volts;
        return drawn;
    }

private:
    __attribute__((always_inline)) void foresee(double volts) {
        constexpr double share = 0x1p-18; // cubed 2^-54
        double const square = volts * volts - 4.0 * ohms_ * law_.watts;
        double const root = std::sqrt(square), per_root = 1.0 / root;
        foreseen_ = volts;
        at_foreseen_ = 2.0 * law_.watts / (volts + root);
        slope_ = -at_foreseen_ * per_root;
        bend_ = slope_ * (ohms_ * slope_ - 1.0) * per_root;
        reach_ = volts > 0.0 ? share * square : none; // not a number where it cannot be fed: beyond reach
    }
    static constexpr double none = std::numeric_limits<double>::quiet_NaN();

    ConstantPower law_;
    double ohms_;
    double last_ = 0.0;                                                    // [V]
    double foreseen_ = 0.0, at_foreseen_ = 0.0, slope_ = 0.0, bend_ = 0.0; // [V], [A], [A/V], [A/V2]
    double reach_ = none;                                                  // [V2]
};

} // namespace bankwright::solver
