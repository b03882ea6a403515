// What does every terminal and part read at one moment? Voltages, currents, sharing, losses, and how good the answer
// is.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/network/moment.hpp"
#include "bankwright/network/readings.hpp"
#include "bankwright/solver/solution.hpp"

#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace bankwright {

struct OperatingPointOptions {
    Moment moment;
};

// Signs: network/readings.hpp.
struct OperatingPoint {
    solver::Status status = solver::Status::bad_circuit;
    std::string reference;                  // terminal that is 0 V: the bank's own negative end
    std::vector<TerminalReading> terminals; // in the author's order
    std::vector<PartReading> parts;         // in the author's order; empty unless solved
    Current residual{};                     // largest sum of currents at any node
    Power imbalance{};                      // what the sources give less what everything else takes
    double condition = 0.0;                 // of the reduced matrix, estimated
    std::optional<double> reachable_share;  // with no_operating_point: largest share of the loads that has an answer
};

// Throws std::invalid_argument where build() does, also for a moment out of its range.
OperatingPoint operating_point(Bank const& bank, OperatingPointOptions const& options = {});

// The reading of one part; throws std::out_of_range, naming it, if there is none: the bank has no such part, or was not
// solved.
inline PartReading const& reading_of(OperatingPoint const& point, std::string_view id) {
    for (auto const& reading : point.parts)
        if (reading.id == id) return reading;
    if (point.status != solver::Status::solved)
        throw std::out_of_range("no reading of `" + std::string(id) + "`: the bank is not solved (" +
                                std::string(name(point.status)) + ")");
    throw std::out_of_range("no reading of a part `" + std::string(id) + "`");
}

// The voltage of one terminal against the reference; throws std::out_of_range, naming it, if there is no such terminal.
inline std::optional<Voltage> voltage_at(OperatingPoint const& point, std::string_view terminal) {
    for (auto const& reading : point.terminals)
        if (reading.name == terminal) return reading.voltage;
    throw std::out_of_range("no reading of a terminal `" + std::string(terminal) + "`");
}

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/operating_point_inl.hpp"
#endif
