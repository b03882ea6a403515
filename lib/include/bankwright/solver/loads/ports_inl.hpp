// Bodies of ports.hpp.
#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/solver/loads/ports.hpp"

namespace bankwright::solver {

BANKWRIGHT_INLINE Ports reduce_to_ports(Circuit const& circuit, Topology const& topology, LinearNetwork const& network,
                                        std::vector<double> const& line_amps, std::vector<std::size_t> const& loads) {
    std::size_t const count = loads.size();
    auto const line = [&](std::size_t port) { return as_index(topology.load_line[loads[port]]); };
    auto const across = [&](std::vector<double> const& volts, std::size_t port) {
        Line const& ends = topology.lines[line(port)];
        return volts[as_index(ends.from)] - volts[as_index(ends.to)];
    };
    Ports ports;
    std::vector<double> const open = network.volts(line_amps);
    for (std::size_t p = 0; p < count; ++p) {
        ports.laws.push_back(circuit.loads[loads[p]].law);
        ports.open_volts.push_back(across(open, p));
    }
    ports.ohms.resize(count * count);
    for (std::size_t p = 0; p < count; ++p) {
        std::vector<double> unit(line_amps.size(), 0.0);
        unit[line(p)] = -1.0;
        std::vector<double> const volts = network.volts(unit);
        for (std::size_t q = 0; q < count; ++q)
            ports.ohms[q * count + p] = across(volts, q);
    }
    for (std::size_t p = 0; p < count; ++p) // reciprocity, which rounding blurs
        for (std::size_t q = 0; q < p; ++q)
            ports.ohms[p * count + q] = ports.ohms[q * count + p] =
                0.5 * (ports.ohms[p * count + q] + ports.ohms[q * count + p]);
    return ports;
}

} // namespace bankwright::solver
