// What a rule may look at. Everything is computed once, when first asked for.
#pragma once

#include "bankwright/analyses/arrangement.hpp"
#include "bankwright/analyses/operating_point.hpp"
#include "bankwright/analyses/wiring_repair.hpp"
#include "bankwright/bank/bank.hpp"

#include <optional>
#include <string>
#include <vector>

namespace bankwright {

class Seen {
public:
    explicit Seen(Bank const& bank) : bank_(bank), graph_(wiring_graph(bank)), verdict_(judge(graph_, graph_.edges)) {}

    Bank const& bank() const { return bank_; }
    WiringGraph const& graph() const { return graph_; }
    WiringVerdict const& verdict() const { return verdict_; } // of the wiring as drawn, all devices closed

    Arrangement const& arrangement() const {
        if (!arrangement_) arrangement_ = bankwright::arrangement(graph_, graph_.edges, verdict_);
        return *arrangement_;
    }
    // All devices closed, every load off: what the wiring itself drives.
    OperatingPoint const& at_rest() const {
        if (!at_rest_) at_rest_ = solve(LoadsAre::at_rest, true);
        return *at_rest_;
    }
    // All devices closed, loads as the file describes them.
    OperatingPoint const& working() const {
        if (!working_) working_ = solve(LoadsAre::as_drawn, true);
        return *working_;
    }

private:
    OperatingPoint solve(LoadsAre loads, bool closed) const {
        OperatingPointOptions options;
        options.moment.loads = loads;
        options.moment.everything_closed = closed;
        return operating_point(bank_, options);
    }

    Bank const& bank_;
    WiringGraph graph_;
    WiringVerdict verdict_;
    mutable std::optional<Arrangement> arrangement_;
    mutable std::optional<OperatingPoint> at_rest_;
    mutable std::optional<OperatingPoint> working_;
};

// What an operating point says of one part; nullptr if it says nothing.
inline PartReading const* reading_of(OperatingPoint const& point, std::string const& id) {
    for (auto const& reading : point.parts)
        if (reading.id == id) return &reading;
    return nullptr;
}

} // namespace bankwright
