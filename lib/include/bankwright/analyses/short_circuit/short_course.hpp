// How does a short go on, and what do its parts carry meanwhile, if every breaker and fuse is as slow as its standard
// lets it be?
#pragma once

#include "bankwright/analyses/short_circuit/short_places.hpp"
#include "bankwright/analyses/short_circuit/shorted_network.hpp"
#include "bankwright/bank/bank.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/units/quantities.hpp"

#include <optional>
#include <string>
#include <vector>

namespace bankwright {

// The same bank with every breaker, fuse and switch closed and every connector mated.
Bank with_all_closed(Bank bank);

// The longest that a device may take at a steady current: what its class promises, or less where the heat that it lets
// through bounds it; infinite where nothing is promised or where it cannot break that current.
Duration latest_opening(ProtectiveDevice const& device, Current current);

class ShortCourse {
public:
    // From one opening to the next.
    struct Stage {
        Duration lasts{}; // infinite: the last, and nothing is sure to end it
        ShortCurrents currents;
    };

    // Of a bank with all closed, and its network. Both must outlive it.
    ShortCourse(Bank const& closed, ShortedNetwork const& network, TerminalPair const& pair);

    std::vector<Stage> const& stages() const { return stages_; } // empty: no short
    Current prospective() const { return stages_.empty() ? Current{} : stages_.front().currents.total; }
    std::optional<Duration> cleared_within() const;
    // Those that must open for it, in order; empty unless it is cleared.
    std::vector<std::string> cleared_by() const;
    bool bypassed() const; // at last no breaker or fuse carries what still flows
    // [A] of a part at a stage; 0 below what rounding leaves.
    Current through(Stage const& stage, std::string const& part) const;

private:
    std::optional<ShortCurrents> with(std::vector<std::string> const& open) const;
    void run();

    Bank const& closed_;
    ShortedNetwork const& network_;
    TerminalPair pair_;
    std::vector<Stage> stages_;
    std::vector<std::string> opened_;
};

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/short_circuit/short_course_inl.hpp"
#endif
