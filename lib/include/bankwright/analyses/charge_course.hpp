// Carries every battery's charge through time, with what flowed on the way, up to a moment or to the first event.
//
// Third order with an embedded second for the error; the last slope of a step is the first of the next. Bogacki and
// Shampine, Applied Mathematics Letters 2 (1989) 321 [from memory]. Charges are watched by the error control; what
// flowed is carried along by the same rule, so that what balances at every moment balances over the time.
#pragma once

#include "bankwright/analyses/bank_in_time.hpp"
#include "bankwright/bank/bank.hpp"
#include "bankwright/linkage.hpp"

#include <cstddef>
#include <functional>
#include <vector>

namespace bankwright {

class ChargeCourse {
public:
    using Charges = std::vector<double>; // [1] by battery; any further entries are for the course itself

    // `bank` must outlive it. `tolerance`: of a battery's charge, a step.
    ChargeCourse(Bank const& bank, Moment const& moment, double tolerance, bool charging = false);

    // Solves for the charges as they stand, after a change of the moment or of the batteries. False: no operating
    // point.
    bool settle();

    enum class Stop { time, event, no_operating_point };
    // On to `until` [s], or to the first moment at which `is_event` is true of the moment last solved, pinned to a
    // millisecond. `on_step` is called after every step taken. The moment of the end is the one last solved.
    Stop advance(double until, std::function<bool()> const& is_event, std::function<void()> const& on_step);

    BankInTime& state() { return state_; }
    BankInTime const& state() const { return state_; }
    double time() const { return time_; } // [s]
    double charge(std::size_t battery) const { return values_[battery]; }
    double coulombs(std::size_t battery) const { return values_[batteries_ + battery]; } // [C] given since the start
    PowerSplit joules() const; // [J], not [W]: over the time since the start
    double output_coulombs(std::size_t output) const { return values_[2 * batteries_ + power_count + output]; } // [C]

private:
    static constexpr std::size_t power_count = 5;

    struct Step {
        bool solved = false;
        Charges values;
        double error = 0.0;
    };
    Charges rates() const;
    Step step_by(double h, Charges const& k1);
    void take(double h, Charges values);
    Stop stop_inside(double h, Charges const& k1, std::function<bool()> const& is_event);

    std::size_t batteries_;
    BankInTime state_;
    double tolerance_;
    Charges values_;
    double time_ = 0.0; // [s]
    double step_ = 0.0; // [s] that the error control would take next
};

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/charge_course_inl.hpp"
#endif
