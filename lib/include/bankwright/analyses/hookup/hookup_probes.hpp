// Where are the meter's probes put? Before a step across the gap that it closes, after it across what it has joined;
// both within reach of one hand wherever that tells anything.
#pragma once

#include "bankwright/analyses/hookup/partial_bank.hpp"
#include "bankwright/bank/bank.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/wiring/places.hpp"

#include <optional>
#include <utility>
#include <vector>

namespace bankwright {

using Probes = std::pair<int, int>; // nodes: red, black

class HookupProbes {
public:
    HookupProbes(Bank const& bank, PartialBank const& partial);

    bool is_live(Connection const& connection, Potentials const& now) const; // a battery on either side
    // In which order a conductor's ends are landed: a battery's post last; else the end with more voltage behind it.
    Probes ends(Connection const& connection, Potentials const& now) const;
    // Across the gap; of a plug across its receptacle, or across the plug where only that is live.
    Probes gap(Connection const& connection, Potentials const& now) const;
    // The largest voltage in one place that runs through what was joined; of a device, the first load that is now fed.
    // Where nothing was joined (a loop closed): the largest of the whole. Where the hands are, before any other
    // place; two places only where no one place shows it.
    Probes across(Connection const& connection, Potentials const& before, Potentials const& now) const;
    // The largest voltage between batteries of one place, if it is more than a single battery's.
    std::optional<Probes> most_live(Potentials const& now) const;
    bool together(int a, int b) const { return places_.together(a, b); } // within reach of one meter
    std::vector<std::string> places_of_work(Probes const& ends) const;   // one, or two of a long conductor
    std::string const& place(int node) const {
        return places_.names[static_cast<std::size_t>(places_.of[static_cast<std::size_t>(node)])];
    }

private:
    double span(int node, Potentials const& now) const; // [V] of its island
    bool has_battery(int node, Potentials const& now) const;

    PartialBank const& partial_;
    Places places_;
    std::vector<std::pair<int, int>> loads_;
    std::vector<int> reach_; // by node: how easily it is reached with a probe, 0 best
};

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/hookup/hookup_probes_inl.hpp"
#endif
