// How long until the chargers have filled the bank, through which stages, and is every battery full when they are done?
//
// Every output gives its whole current until the bank's voltage is up to the one it holds (bulk), then holds that
// voltage while the current falls (absorption); motors and loads are off. What a battery takes at that voltage follows
// devices/battery_acceptance.hpp. Chargers count as plugged in, whatever `connected` says.
#pragma once

#include "bankwright/analyses/discharge.hpp"
#include "bankwright/analyses/run_range.hpp"
#include "bankwright/bank/bank.hpp"
#include "bankwright/devices/battery_acceptance.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/units/quantities.hpp"

#include <optional>
#include <string>
#include <vector>

namespace bankwright {

struct RechargeOptions {
    std::optional<StateOfCharge> charge;            // of every battery at the start, instead of its own
    Duration longest = 100.0 * 3600.0 * si::second; // give up waiting
    double tolerance = 1e-9;                        // of a battery's charge, a step
    double samples_apart = 0.005;                   // of a battery's charge, at most
    Duration every{};                               // its multiples are among the samples too; 0: none
};

enum class RechargeEnd {
    full,            // no battery takes more than its tail current, no output is at its limit, and all are full
    not_all_full,    // the same, but one of them is not
    time,            // RechargeOptions::longest is over
    nothing_charges, // no charger reaches a battery that its voltage could fill
    battery_empty,   // a battery is drained instead, around a loop, until it gives no more
};

// Did it charge the bank, whole or in part?
constexpr bool charges(RechargeEnd end) {
    return end == RechargeEnd::full || end == RechargeEnd::not_all_full || end == RechargeEnd::time;
}

// One charger output from the moment it gives less than all it can.
struct OutputStages {
    std::string output; // "ch.1"
    Voltage holds{};
    Current most{};
    std::optional<Duration> bulk; // until it reached its voltage; none if it never did
    Charge given{};               // in all
};

struct RechargedBattery {
    StateOfCharge charge = StateOfCharge::of(0.0); // at the end
    std::optional<Duration> full;                  // when it was at 99 %
    Voltage highest{};                             // across its posts on the way
    Current most{};                                // into it on the way
};

struct RechargeResult {
    RechargeEnd end = RechargeEnd::time;
    std::string ended_by; // the battery that is drained
    Duration duration{};
    std::vector<OutputStages> outputs;
    std::vector<RechargedBattery> batteries; // in the bank's order
    std::vector<BatterySample> samples;      // the first at 0, the last at `duration`
    std::vector<DroppedOut> dropped_out;     // lithium, above its high_cutoff
    EnergySplit energy;
};

// Between which times a charge lies, for what batteries of one chemistry differ in (usual_charging_spread); none where
// its end is not told by them.
inline std::optional<TimeRange> range_of(RechargeResult const& run) {
    if (run.end != RechargeEnd::full && run.end != RechargeEnd::not_all_full) return std::nullopt;
    auto const spread = usual_charging_spread.value();
    return TimeRange{run.duration * (1.0 - spread), run.duration * (1.0 + spread)};
}

// Why a bank cannot be charged on paper: a battery without `capacity` or `chemistry`, no charger, a charger without
// `voltage` or `current`; nothing if it can.
std::optional<std::string> missing_for_recharge(Bank const& bank);

// Throws std::invalid_argument for a bank of which missing_for_recharge() says something, and for an option out of its
// range (network/option_limits.hpp).
RechargeResult recharge(Bank const& bank, RechargeOptions const& options = {});

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/recharge_inl.hpp"
#endif
