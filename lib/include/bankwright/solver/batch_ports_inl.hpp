// Bodies of batch.hpp for several loads whose current depends on their voltage (LoadMethod::ports).
//
// Method. With each such load replaced by a given current the banks are linear. One solve with these currents at rest
// gives the open voltage of every port, one with 1 A through it alone, everything else at rest, what each port pulls
// down (Z). The currents that fit V = V0 - Z I and every law are sought in all lanes at once (port_lanes.hpp), and one
// more solve with them gives the voltages.
#pragma once

#include <algorithm>
#include <limits>

#include "bankwright/solver/batch.hpp"

namespace bankwright::solver {

BANKWRIGHT_INLINE double* Block::port_amps(std::size_t port) {
    return linear_->parameter(plan_->linear->layout.load[static_cast<std::size_t>(plan_->port_loads[port])]);
}

BANKWRIGHT_INLINE double Block::across(std::size_t port, int lane) const {
    Load const& load = plan_->pattern.loads[static_cast<std::size_t>(plan_->port_loads[port])];
    return linear_->volts(load.plus)[lane] - linear_->volts(load.minus)[lane];
}

// Everything but the currents of the ports, which are set to rest.
BANKWRIGHT_INLINE void Block::feed(Sources sources) {
    ParameterLayout const &from = plan_->layout, &to = plan_->linear->layout;
    auto const copy = [&](int there, int here, bool rests) {
        if (rests)
            std::fill_n(linear_->parameter(there), lanes, 0.0);
        else
            std::copy_n(parameter(here), lanes, linear_->parameter(there));
    };
    bool const rest = sources == Sources::at_rest;
    for (std::size_t b = 0; b < from.resistance.size(); ++b) {
        copy(to.resistance[b], from.resistance[b], false);
        if (from.emf[b] >= 0) copy(to.emf[b], from.emf[b], rest);
    }
    for (std::size_t l = 0; l < from.load.size(); ++l)
        copy(to.load[l], from.load[l], rest || !std::holds_alternative<ConstantCurrent>(plan_->pattern.loads[l].law));
}

BANKWRIGHT_INLINE void Block::solve_ports(int used) {
    std::size_t const ports = plan_->port_loads.size();
    feed(Sources::as_given);
    linear_->solve(used);
    for (std::size_t p = 0; p < ports; ++p)
        for (int lane = 0; lane < used; ++lane)
            ports_->open_volts(p)[lane] = across(p, lane);
    feed(Sources::at_rest);
    for (std::size_t p = 0; p < ports; ++p) {
        std::fill_n(port_amps(p), lanes, 1.0);
        linear_->solve(used);
        std::fill_n(port_amps(p), lanes, 0.0);
        for (std::size_t q = 0; q < ports; ++q)
            for (int lane = 0; lane < used; ++lane)
                ports_->ohms(q, p)[lane] = -across(q, lane);
    }
    for (std::size_t p = 0; p < ports; ++p) {
        auto const load = static_cast<std::size_t>(plan_->port_loads[p]);
        ports_->set_law(p, plan_->pattern.loads[load].law, parameter(plan_->layout.load[load]));
    }
    ports_->find_currents(used);

    feed(Sources::as_given);
    for (std::size_t p = 0; p < ports; ++p)
        std::copy_n(ports_->amps(p), lanes, port_amps(p));
    linear_->solve(used);
    for (int node : plan_->wanted) {
        double* row = rows_.data() + volts_[static_cast<std::size_t>(node)];
        double const* found = linear_->volts(node);
        for (int lane = 0; lane < used; ++lane)
            row[lane] = ports_->is_lost(lane) ? std::numeric_limits<double>::quiet_NaN() : found[lane];
    }
}

} // namespace bankwright::solver
