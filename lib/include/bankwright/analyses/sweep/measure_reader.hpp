// How is an answer of a sweep read off a block of solved banks?
#pragma once

#include "bankwright/analyses/sweep/swept_key.hpp"
#include "bankwright/network/network.hpp"
#include "bankwright/solver/batch.hpp"
#include "bankwright/solver/load_laws.hpp"

#include <algorithm>
#include <cstddef>
#include <limits>
#include <stdexcept>
#include <string>

namespace bankwright::internal::sweeping {

inline constexpr std::size_t wide = solver::lanes; // banks in a block
inline constexpr double no_answer = std::numeric_limits<double>::quiet_NaN();

// One answer.
struct Reader {
    int high = -1, low = -1; // nodes; -1: the reference
    int branch = -1;
    int load = -1;
    bool unknown = false; // no path to the reference
    bool idle = false;    // a load that nothing feeds

    void read(solver::Block& block, int lane_count, double* out) const {
        auto const count = static_cast<std::size_t>(lane_count);
        if (unknown || idle) {
            std::fill_n(out, count, unknown ? no_answer : 0.0);
            return;
        }
        double room[wide];
        if (branch >= 0) {
            block.branch_amps(branch, room);
        } else {
            double const* const plus = block.volts(high);
            double const* const minus = low >= 0 ? block.volts(low) : nullptr;
            for (std::size_t lane = 0; lane < wide; ++lane)
                room[lane] = plus[lane] - (minus ? minus[lane] : 0.0);
        }
        if (load >= 0)
            for (std::size_t lane = 0; lane < count; ++lane)
                room[lane] = amperes(block, lane, room[lane]);
        std::copy_n(room, count, out);
    }

private:
    double amperes(solver::Block& block, std::size_t lane, double volts) const {
        auto const number = static_cast<std::size_t>(load);
        double const* const p = block.parameter(block.plan().layout.load[number]) + lane;
        if (!(volts == volts)) return no_answer;
        switch (block.plan().pattern.loads[number].law.index()) {
        case 0:
            return p[0];
        case 1:
            return p[0] == 0.0 ? 0.0 : p[0] / volts;
        default:
            return solver::current(solver::SquareLaw{p[0], p[wide], p[2 * wide]}, volts);
        }
    }
};

inline Reader reader_of(Measure const& measure, Network const& network, solver::Topology const& topology) {
    Reader reader;
    auto const island = [&](int node) { return topology.island[static_cast<std::size_t>(node)]; };
    if (measure.kind == Measure::terminal) {
        reader.high = node_of(network, measure.name);
        reader.unknown = island(reader.high) != island(network.circuit.reference);
        return reader;
    }
    auto const& part = part_of(network, measure.name);
    if (part.elements.empty() || part.kind == PartKind::charger || part.kind == PartKind::busbar)
        throw std::invalid_argument("a sweep does not measure a " + std::string(bankwright::name(part.kind)) +
                                    " such as `" + measure.name + "`; ask for a voltage at its terminals");
    auto const& element = part.elements.front();
    bool const battery = part.kind == PartKind::battery; // its branch runs from - to +
    reader.high = battery ? element.to : element.from;
    reader.low = battery ? element.from : element.to;
    if (measure.kind == Measure::voltage) {
        reader.unknown = island(reader.high) != island(reader.low);
        return reader;
    }
    switch (element.is) {
    case Element::Is::branch:
        reader.branch = element.index;
        break;
    case Element::Is::load: {
        reader.load = element.index;
        reader.idle = topology.load_feed[static_cast<std::size_t>(element.index)] != solver::Feed::port;
        break;
    }
    case Element::Is::gap:
        reader.idle = true;
        break;
    case Element::Is::join:
        throw std::invalid_argument("`" + measure.name +
                                    "` has no resistance, so that a sweep cannot tell its current; ask for that of "
                                    "what is in series with it");
    }
    return reader;
}

} // namespace bankwright::internal::sweeping
