// Follows the tool: reads on the faulty bank what it asks for, with a meter that errs, until it asks for no more.
#pragma once

#include "bankwright/analyses/trace.hpp"
#include "traces/true_faults.hpp"

#include <algorithm>
#include <cmath>
#include <random>
#include <string>
#include <utility>
#include <vector>

namespace traces {

inline bool says(Fault const& fault, TrueFault const& truth) {
    return name(fault.kind) == truth.kind && fault.part == truth.part &&
           (" " + fault.detail + " ").find(truth.detail) != std::string::npos;
}

// Exactly these faults and no other; none: as described.
inline bool says(std::vector<Fault> const& faults, std::vector<TrueFault> const& truths) {
    return faults.size() == truths.size() && std::all_of(truths.begin(), truths.end(), [&](auto const& truth) {
               return std::any_of(faults.begin(), faults.end(), [&](auto const& fault) { return says(fault, truth); });
           });
}

inline bool names_the_group(Diagnosis const& diagnosis, std::vector<TrueFault> const& truths) {
    return says(diagnosis.faults, truths) || std::any_of(diagnosis.alike.begin(), diagnosis.alike.end(),
                                                         [&](auto const& faults) { return says(faults, truths); });
}

// One of its faults, or of what is alike, is one of the true ones.
inline bool names_one(Diagnosis const& diagnosis, std::vector<TrueFault> const& truths) {
    auto const is_true = [&](Fault const& fault) {
        return std::any_of(truths.begin(), truths.end(), [&](auto const& truth) { return says(fault, truth); });
    };
    auto const has_true = [&](std::vector<Fault> const& faults) {
        return std::any_of(faults.begin(), faults.end(), is_true);
    };
    return has_true(diagnosis.faults) || std::any_of(diagnosis.alike.begin(), diagnosis.alike.end(), has_true);
}

struct Followed {
    TraceResult result; // the last
    bool found = false; // the true group is first when no more is asked for, or at the last reading allowed
    int settled = 0;    // readings after which it is first and stays so
    int taken = 0;
};

// `bank`: as it stands, with the faults in it.
inline Followed follow(FaultTracer& tracer, Bank const& bank, std::vector<TrueFault> const& truths, int most,
                       std::mt19937& random) {
    std::vector<TakenReading> readings;
    auto result = tracer.trace(readings);
    Followed followed;
    followed.found = names_the_group(result.diagnoses.front(), truths);
    while (result.next && static_cast<int>(readings.size()) < most) {
        auto const& next = *result.next;
        readings.push_back(
            {VoltsRead{next.red, next.black, read_volts(truths, bank, next.moment, next.red, next.black, random)},
             next.moment});
        result = tracer.trace(readings);
        bool const was_found = followed.found;
        followed.found = names_the_group(result.diagnoses.front(), truths);
        if (followed.found && !was_found) followed.settled = static_cast<int>(readings.size());
    }
    followed.result = std::move(result);
    followed.taken = static_cast<int>(readings.size());
    if (!followed.found) followed.settled = most;
    return followed;
}

// "60 %: J1 missing", for who looks at what was not found.
inline std::string told(TraceResult const& result) {
    auto const& first = result.diagnoses.front();
    std::string words = std::to_string(std::lround(100.0 * first.probability)) + " %:";
    for (auto const& fault : first.faults)
        words += " " + fault.part + " " + std::string(name(fault.kind)) + " " + fault.detail;
    return words + (result.doubtful.empty() ? "" : ", and doubts a reading");
}

inline int median(std::vector<int> values) {
    std::nth_element(values.begin(), values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2), values.end());
    return values[values.size() / 2];
}

} // namespace traces
