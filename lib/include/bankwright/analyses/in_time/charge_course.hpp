// Carries every battery's charge through time, with what flowed on the way, up to a moment or to the first event.
//
// Fifth order with error control (numeric/dormand_prince.hpp). Charges are watched by the error control; what flowed
// is carried along by the same rule, so that what balances at every moment balances over the time. A step may be long:
// what lies inside it is told at as many moments as the charges ask for, and watched for events there.
//
// Where one battery settles far faster than the others move, the explicit rule may only take steps as short as that
// one's time. It notices, and a linearly implicit rule (solver/stiff_step.hpp) goes on.
#pragma once

#include "bankwright/analyses/in_time/bank_in_time.hpp"
#include "bankwright/analyses/in_time/carried_values.hpp"
#include "bankwright/bank/bank.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/numeric/dormand_prince.hpp"
#include "bankwright/solver/stiff_step.hpp"

#include <cstddef>
#include <functional>
#include <optional>

namespace bankwright {

class ChargeCourse {
public:
    // `bank` must outlive it. `tolerance`: of a battery's charge, a step.
    ChargeCourse(Bank const& bank, Moment const& moment, double tolerance, bool charging = false);

    // Solves for the charges as they stand, after a change of the moment or of the batteries. False: no operating
    // point.
    bool settle();

    // From now on `on_moment` is also called at whole multiples of so many seconds since the start. 0: no more.
    void tell_at_multiples_of(double seconds) { every_ = seconds; }

    enum class Stop { time, event, no_operating_point };
    // On to `until` [s], or to the first moment at which `is_event` is true of the moment last solved, pinned to a
    // millisecond. `on_moment` is called at the end of every step taken, and inside it wherever a charge has moved by
    // `apart` [1] since it was called last. The moment of the end is the one last solved.
    Stop advance(double until, double apart, std::function<bool()> const& is_event,
                 std::function<void()> const& on_moment);

    BankInTime& state() { return state_; }
    BankInTime const& state() const { return state_; }
    double time() const { return time_; } // [s]
    double charge(std::size_t battery) const { return charges_.now()[battery]; }
    double lag(std::size_t battery) const { return charges_.now()[lags_ + battery]; }
    double coulombs(std::size_t battery) const { return flows_.now()[battery]; } // [C] given since the start
    PowerSplit joules() const; // [J], not [W]: over the time since the start
    double output_coulombs(std::size_t output) const { return flows_.now()[batteries_ + power_count + output]; } // [C]

private:
    static constexpr std::size_t power_count = 5;
    using Shares = numeric::dormand_prince::Shares;

    // A step whose slopes are found.
    struct Step {
        double h = 0.0; // [s]
        std::optional<Stop> stop;
    };
    double first_step() const;
    double next_goal(double until) const;
    void find_slope(std::size_t number);
    bool find_slopes(double h);
    bool find_step(double h);
    bool creeps(double h) const;
    void turn_stiff();
    void copy_slopes(double* slopes);
    bool find_derivative(double const* values, double* columns);
    void stand_at_end(double h);
    double error(double h) const;
    void go_to(double h, Shares const& shares);
    std::optional<Step> try_step(double h, bool may_grow, double apart, std::function<bool()> const& is_event);
    Step pin(double h, std::function<bool()> const& is_event);
    bool stand_inside(double h, double part);
    Step go_through(Step step, double apart, std::function<bool()> const& is_event,
                    std::function<void()> const& on_moment);

    std::size_t batteries_;
    std::size_t lags_; // where they begin among the charges
    BankInTime state_;
    double tolerance_;
    double every_ = 0.0;                     // [s]
    double time_ = 0.0;                      // [s]
    double start_time_ = 0.0;                // [s] of the step
    CarriedValues charges_;                  // [1] by battery, then the lags of what is at hand
    CarriedValues flows_;                    // [C] by battery, [J] as in PowerSplit, [C] by charger output
    solver::LaneRows on_the_way_;            // [1] charges within the step
    std::optional<solver::StiffStep> stiff_; // once the explicit rule creeps, until the next settle()
    bool stiff_started_ = false;             // it knows where the step begins
    std::size_t steps_ = 0;                  // taken since the last settle()
    double step_ = 0.0;                      // [s] that the error control would take next; 0 if it knows nothing yet
};

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/in_time/charge_course_inl.hpp"
#endif
