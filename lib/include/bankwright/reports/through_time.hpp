// What a renderer of a run or of a charge is given: one file's bank through time.
#pragma once

#include "bankwright/analyses/discharge.hpp"
#include "bankwright/analyses/recharge.hpp"
#include "bankwright/findings/finding.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace bankwright {

struct ThroughTime {
    std::string file;                       // as the user named it
    std::optional<std::string> arrangement; // "3S1P", none where the wiring is no such thing
    std::vector<std::string> batteries;     // ids, in the order of the samples
    std::vector<std::optional<Charge>> capacities;
    std::vector<std::optional<Voltage>> high_cutoffs;
    FindingCounts counts; // what `check` has to say about the same bank
};

struct Discharged : ThroughTime {
    DischargeResult run;
    std::optional<Duration> alike; // how long the same batteries would run if they were all alike
};

struct Recharged : ThroughTime {
    RechargeResult run;
};

// The words of the JSON.
constexpr std::string_view name(RunEnd end) {
    switch (end) {
    case RunEnd::time:
        return "time";
    case RunEnd::battery_empty:
        return "battery-empty";
    case RunEnd::battery_cutoff:
        return "battery-cutoff";
    case RunEnd::load_cutoff:
        return "load-cutoff";
    case RunEnd::no_operating_point:
        return "no-operating-point";
    case RunEnd::nothing_drawn:
        return "nothing-drawn";
    }
    return "time";
}

constexpr std::string_view name(RechargeEnd end) {
    switch (end) {
    case RechargeEnd::full:
        return "full";
    case RechargeEnd::time:
        return "time";
    case RechargeEnd::nothing_charges:
        return "nothing-charges";
    case RechargeEnd::battery_empty:
        return "battery-empty";
    }
    return "time";
}

} // namespace bankwright
