// What can flow through a part when everything behind it is shorted with no resistance at all?
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/network/network.hpp"
#include "bankwright/network/readings.hpp"
#include "bankwright/solver/small_signal.hpp"
#include "bankwright/solver/solution.hpp"
#include "bankwright/units/quantities.hpp"

#include <optional>
#include <string>
#include <vector>

namespace bankwright {

// A bolted short between a terminal and the bank's own negative end, every device closed, every load and charger off.
struct BoltedShort {
    Current total;        // into the short
    Current through_part; // of that, through the part asked for
};

// The bank's network is built and factored once: with nothing that follows its voltage in it, a short draws V0 / Z from
// a terminal, by Thevenin's theorem, and adds its own currents to those that flow without it.
class BoltedShorts {
public:
    explicit BoltedShorts(Bank const& bank);

    // None where the two are no different points, or nothing feeds the short. Throws std::out_of_range for a terminal
    // or part that the bank does not have.
    std::optional<BoltedShort> at(std::string const& terminal, std::string const& part);

private:
    solver::Solution with_short(int node);

    Network network_;
    solver::SmallSignal small_; // seen from every node against the reference
    // Of the last short: both ends of a device without resistance are asked, and are one node to the network.
    int drawn_at_ = -1; // merged node
    solver::SmallAnswer drawn_;
};

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/prospective_current_inl.hpp"
#endif
