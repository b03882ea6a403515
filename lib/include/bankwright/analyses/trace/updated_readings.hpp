// What a meter would show on a wiring with faults in it, by small updates of the wiring as described
// (solver/variants.hpp): the same answers as ExpectedReadings, for a tenth of the work, where thousands of suspects are
// weighed.
#pragma once

#include "bankwright/analyses/trace/expected_readings.hpp"
#include "bankwright/analyses/trace/faults.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/solver/topology.hpp"
#include "bankwright/solver/variants.hpp"

#include <cstddef>
#include <map>
#include <optional>
#include <utility>
#include <vector>

namespace bankwright {

// A reading of a wiring: a voltage between two nodes, or the current through an element.
struct AskedReading {
    int red = -1, black = -1;
    std::optional<std::size_t> element; // in FaultyWiring::elements
};

class UpdatedReadings {
public:
    using Faults = std::vector<std::pair<FaultChange const*, double>>; // with the value of each

    UpdatedReadings(FaultyWiring wiring, PartSpread const& spread);
    FaultyWiring const& drawn() const { return wiring_; }
    bool serves() const { return serves_; } // else every suspect is solved afresh

    // None where an update will not do: a load that follows its voltage, a fault of an ideal join, islands that join or
    // fall apart, a current through what the faults change. `doubts` as ExpectedReadings takes them.
    std::optional<std::vector<ExpectedReading>> with(Faults const& faults, std::vector<PartDoubt> const& doubts,
                                                     std::vector<AskedReading> const& asked);

private:
    struct Faulty;
    bool put(FaultChange const& fault, double value, Faulty& faulty) const;
    bool exchange(FaultChange const& fault, Faulty& faulty) const;
    bool read(Faulty const& faulty, AskedReading const& asked, ExpectedReading& reading);
    bool respond(Faulty const& faulty, int red, int black);
    void be_moved(Faulty const& faulty, std::vector<double>& sensitivities) const;
    bool together(int a, int b) const;

    FaultyWiring wiring_;
    PartSpread spread_;
    bool serves_ = false;
    solver::Topology topology_;
    std::optional<solver::Variants> as_read_;
    // The wiring without its emfs, 1 A in at the first node and out at the second: what follows from an emf anywhere,
    // by reciprocity.
    std::map<std::pair<int, int>, solver::Variants> answering_;
    std::vector<double> volts_, response_; // [V] by node, of the suspect at hand
};

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/trace/updated_readings_inl.hpp"
#endif
