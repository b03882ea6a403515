// Bodies of sensitivities.hpp.
#pragma once

#include "bankwright/solver/load_laws.hpp"
#include "bankwright/solver/sensitivities.hpp"
#include "bankwright/solver/small_signal.hpp"
#include "bankwright/solver/validate.hpp"

#include <algorithm>
#include <stdexcept>
#include <utility>

namespace bankwright::solver {

namespace internal {

// How the current of a load follows the numbers of its law at given `volts` and `amps`; `held` for a source that holds
// its voltage: minus what it carries for one unit in the adjoint network then stands for its volts.
struct LawNumbers {
    double volts, amps; // at the operating point
    double adjoint_volts, adjoint_amps;

    std::vector<double> operator()(ConstantCurrent const&) const { return {adjoint_volts}; }
    std::vector<double> operator()(ConstantPower const&) const { return {volts > 0.0 ? adjoint_volts / volts : 0.0}; }
    std::vector<double> operator()(SquareLaw const& law) const {
        // E + c R E^2 = d V and I = d c E^2, each number's own change through E
        double const back = back_voltage(law, volts), c = law.coefficient, r = law.resistance, d = law.duty;
        double const bend = 1.0 + 2.0 * c * r * back, square = back * back;
        return {adjoint_volts * d * square / bend, adjoint_volts * (-2.0 * d * c * c * square * back / bend),
                adjoint_volts * (c * square + 2.0 * d * c * back * std::max(volts, 0.0) / bend)};
    }
    std::vector<double> operator()(LimitedSource const& law) const {
        if (amps >= 0.0) return {0.0, 0.0};
        if (amps <= -law.amperes) return {0.0, -adjoint_volts};
        return {-adjoint_amps, 0.0}; // an emf without resistance, whose current runs the other way
    }
};

// The pair of nodes whose voltage a gauge reads.
inline NodePair span_of(Circuit const& circuit, Topology const& topology, Gauge const& gauge) {
    if (gauge.kind == Gauge::span_volts) return {gauge.number, gauge.other};
    int const island = topology.island[static_cast<std::size_t>(gauge.number)];
    if (island == 0) return {gauge.number, circuit.reference};
    auto const zero =
        std::find(topology.merged.begin(), topology.merged.end(), topology.root[static_cast<std::size_t>(island)]);
    return {gauge.number, static_cast<int>(zero - topology.merged.begin())};
}

} // namespace internal

BANKWRIGHT_INLINE Sensitivities sensitivities(Circuit const& circuit, std::vector<Gauge> const& gauges,
                                              SolveOptions const& options) {
    Sensitivities found;
    if (!is_valid(circuit)) return found;
    Topology const wiring = topology(circuit);
    std::vector<NodePair> pairs;
    for (Gauge const& gauge : gauges) {
        auto const within = [](int number, std::size_t count) {
            return number >= 0 && static_cast<std::size_t>(number) < count;
        };
        bool const is_branch = gauge.kind == Gauge::branch_amps;
        if (!within(gauge.number, is_branch ? circuit.branches.size() : wiring.island.size()) ||
            (gauge.kind == Gauge::span_volts && !within(gauge.other, wiring.island.size())))
            throw std::invalid_argument("a gauge reads what is not in the circuit");
        if (is_branch) continue;
        pairs.push_back(internal::span_of(circuit, wiring, gauge));
        auto const island = [&](int node) { return wiring.island[static_cast<std::size_t>(node)]; };
        if (island(pairs.back().plus) != island(pairs.back().minus))
            throw std::invalid_argument("a gauge reads between two islands");
    }

    SmallSignal const small(circuit, pairs, LoadsDo::follow, options);
    Solution const& point = small.operating_point();
    found.status = point.status;
    if (found.status != Status::solved) return found;
    std::size_t next = 0; // of the pairs
    for (Gauge const& gauge : gauges) {
        bool const is_branch = gauge.kind == Gauge::branch_amps;
        SmallAnswer const adjoint = is_branch ? small.push(gauge.number) : small.draw(next);
        GaugeSensitivities of;
        of.reading = is_branch ? point.branch_amps[static_cast<std::size_t>(gauge.number)]
                               : small.volts(circuit.loads.size() + next);
        if (!is_branch) ++next;
        for (std::size_t b = 0; b < circuit.branches.size(); ++b)
            of.to_resistance.push_back(-point.branch_amps[b] * adjoint.branch_amps[b]);
        of.to_emf = adjoint.branch_amps;
        for (std::size_t l = 0; l < circuit.loads.size(); ++l)
            of.to_load.push_back(std::visit(
                internal::LawNumbers{small.volts(l), point.load_amps[l], adjoint.load_volts[l], adjoint.load_amps[l]},
                circuit.loads[l].law));
        found.gauges.push_back(std::move(of));
    }
    return found;
}

} // namespace bankwright::solver
