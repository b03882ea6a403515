// How long will it run, which battery ends the run, and how does the sharing drift on the way?
//
// Every battery's charge is carried through time, and with it how much of that lags behind and cannot come at once
// (devices/battery_recovery.hpp). Its voltage follows from what is at hand, its resistance from the charge, the
// currents from the network at each moment. At a constant current from full what is at hand lasts as long as Peukert's
// law says; what is left then comes at a lower current, or after a rest.
#pragma once

#include "bankwright/analyses/course.hpp"
#include "bankwright/bank/bank.hpp"
#include "bankwright/bank/duty.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/network/moment.hpp"
#include "bankwright/units/quantities.hpp"

#include <optional>
#include <string>
#include <vector>

namespace bankwright {

struct DischargeOptions {
    Moment moment;                                  // what the loads do all the while; chargers ashore give nothing
    Duty duty;                                      // if it has legs: the throttle of every motor, leg after leg
    Duration longest = 200.0 * 3600.0 * si::second; // give up looking
    Duration rest{};                                // afterwards, with motors and loads off
    std::optional<StateOfCharge> reserve; // instead of the bank's own; its moment is told, and the run goes on
    double tolerance = 1e-9;              // of a battery's charge, a step
    double samples_apart = 0.005;         // of a battery's charge, at most; at rest, where less happens, a tenth of it
    bool keep_samples = true;             // else the first and the last alone
    Duration every{};                     // its multiples are among the samples too; 0: none
};

// Legs that repeat are run so often at most, and the run then ends as if its time were over: 10 000 of half a minute
// are three days and a half.
inline constexpr std::size_t most_legs = 10'000;

enum class RunEnd {
    time,               // DischargeOptions::longest is over, or the last leg
    battery_empty,      // a battery has no charge left, or none at hand at its current (DischargeResult::recovers)
    battery_cutoff,     // a battery's voltage is down to its low_cutoff, its own or its chemistry's
    load_cutoff,        // a motor or load sees less than its min_voltage
    no_operating_point, // the bank can no longer give what the loads ask for
    nothing_drawn,      // no current flows in any load
};

struct DischargeResult {
    RunEnd end = RunEnd::time;
    std::string ended_by;  // the battery, motor or load; empty where none is to blame
    bool recovers = false; // battery_empty: the rest of its charge, over a fiftieth, comes back with time
    Duration runtime{};
    std::optional<Duration> to_reserve; // until the first battery was down to its reserve; none if it never was
    std::vector<BatterySample> samples; // the first at 0, the last at `runtime`; fewer where they would fill memory
    std::vector<BatterySample> rest;    // afterwards, if asked for; its times go on from `runtime`
    std::string rest_ended_by; // a battery that has nothing left to drive around a loop; empty: the rest is over
    std::vector<DroppedOut> dropped_out;
    std::vector<ReversedCell> reversed_cells;
    std::vector<Charge> given; // by battery, over the run without the rest
    EnergySplit energy;        // likewise
    std::size_t legs_done = 0; // whole ones, repeats counted
};

// Why a bank cannot be run through time: a battery of which `capacity` or `chemistry` is not stated; nothing if it can.
std::optional<std::string> missing_for_discharge(Bank const& bank);

// Throws std::invalid_argument for an option out of its range (network/option_limits.hpp).
void refuse_unfit(DischargeOptions const& options);

// Throws std::invalid_argument for a bank of which missing_for_discharge() says something, and for unfit options.
DischargeResult discharge(Bank const& bank, DischargeOptions const& options = {});

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/discharge_inl.hpp"
#endif
