// A bank at one moment of a run, as the integration sees it: charges in, currents and voltages out.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/network/moment.hpp"
#include "bankwright/network/network.hpp"
#include "bankwright/solver/solution.hpp"
#include "bankwright/solver/topology.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace bankwright {

class DischargingBank {
public:
    DischargingBank(Bank const& bank, Moment const& moment);

    // What flows at these states of charge. False: there is no operating point.
    bool solve(std::vector<double> const& charge);

    // Of the moment last solved.
    double amperes(std::size_t battery) const;     // [A] positive when it discharges; 0 once it has dropped out
    double volts(std::size_t battery) const;       // [V] across its posts
    double charge_rate(std::size_t battery) const; // [1/s] of its state of charge, negative when it discharges
    double load_volts(std::size_t load) const;     // [V] by load_ids()
    bool draws() const;                            // any motor or load carries current

    std::vector<std::string> const& load_ids() const { return load_ids_; } // motors and loads
    void drop_out(std::size_t battery);                                    // its protective disconnect opens
    bool has_dropped_out(std::size_t battery) const { return branch_[battery] < 0; }

private:
    Bank const& bank_;
    Network network_;
    solver::Topology topology_;
    solver::Solution solution_;
    std::vector<int> branch_; // by battery, in the circuit; -1 once it has dropped out
    std::vector<std::string> load_ids_;
    std::vector<Element> load_elements_;
};

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/discharging_bank_inl.hpp"
#endif
