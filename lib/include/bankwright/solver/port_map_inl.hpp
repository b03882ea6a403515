// Bodies of port_map.hpp.
#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/solver/column_sums.hpp"
#include "bankwright/solver/currents/branch_currents.hpp"
#include "bankwright/solver/linear_network.hpp"
#include "bankwright/solver/loads/port_formula.hpp"
#include "bankwright/solver/port_map.hpp"
#include "bankwright/solver/solve.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <variant>

namespace bankwright::solver {

BANKWRIGHT_INLINE Watched everything(Circuit const& circuit) {
    Watched all;
    all.nodes.resize(as_index(circuit.nodes));
    all.branches.resize(circuit.branches.size());
    std::iota(all.nodes.begin(), all.nodes.end(), 0);
    std::iota(all.branches.begin(), all.branches.end(), 0);
    return all;
}

namespace internal {

// The loads whose current follows their voltage.
inline std::vector<std::size_t> loads_to_settle(Circuit const& circuit, Topology const& topology) {
    std::vector<std::size_t> loads;
    for (std::size_t l = 0; l < circuit.loads.size(); ++l)
        if (topology.load_feed[l] == Feed::port && !std::holds_alternative<ConstantCurrent>(circuit.loads[l].law))
            loads.push_back(l);
    return loads;
}

} // namespace internal

BANKWRIGHT_INLINE PortMap::PortMap(Circuit const& circuit, Topology const& topology, std::vector<int> const& sources,
                                   Watched const& watched, InstructionSet set)
    : set_(set), sources_(sources.size()), ports_count_(internal::loads_to_settle(circuit, topology).size()),
      values_(watched.nodes.size() + watched.branches.size()), stride_(padded(ports_count_ + values_)),
      port_loads_(internal::loads_to_settle(circuit, topology)),
      columns_((1 + sources_ + ports_count_) * stride_ / lanes), sums_(stride_ / lanes),
      open_volts_(rows_for(sources_)) {
    Circuit alone = circuit; // one source at a time
    for (int s : sources)
        alone.branches[as_index(s)].emf = 0.0;
    for (std::size_t l : port_loads_) {
        ports_.laws.push_back(circuit.loads[l].law);
        alone.loads[l].law = ConstantCurrent{0.0};
    }
    ports_.open_volts.assign(ports_count_, 0.0);
    ports_.ohms.assign(ports_count_ * ports_count_, 0.0);
    port_amps_.assign(ports_count_, 0.0);

    auto const put = [&](std::size_t number, auto const& volts_of, std::vector<double> const& branch_amps) {
        double* value = column(number);
        for (int n : watched.nodes)
            *value++ = volts_of(n);
        for (int b : watched.branches)
            *value++ = branch_amps[as_index(b)];
        for (std::size_t l : port_loads_)
            *value++ = volts_of(circuit.loads[l].plus) - volts_of(circuit.loads[l].minus);
    };
    Solution const stays = bankwright::solver::solve(alone, topology);
    status_ = stays.status;
    if (status_ != Status::solved) return;
    load_amps_ = stays.load_amps;
    for (std::size_t l = 0; l < circuit.loads.size(); ++l)
        if (std::find(port_loads_.begin(), port_loads_.end(), l) == port_loads_.end()) other_loads_.push_back(l);
    put(
        0, [&](int n) { return stays.volts[as_index(n)]; }, stays.branch_amps);

    std::vector<double> siemens(topology.lines.size(), 0.0);
    for (std::size_t b = 0; b < circuit.branches.size(); ++b) {
        if (topology.branch_line[b] >= 0)
            siemens[as_index(topology.branch_line[b])] = 1.0 / circuit.branches[b].resistance;
        alone.branches[b].emf = 0.0;
    }
    LinearNetwork const network(topology, siemens, SolveOptions{}.star_mesh_limit, SolveOptions{}.factor_limit);
    BranchCurrents const currents(alone, topology, network);
    std::vector<double> line_amps(topology.lines.size(), 0.0), load_amps(circuit.loads.size(), 0.0);
    auto const put_alone = [&](std::size_t number, int line, double amps) {
        if (line >= 0) line_amps[as_index(line)] = amps;
        auto const volts = network.volts(line_amps);
        put(
            number, [&](int n) { return volts[as_index(topology.merged[as_index(n)])]; },
            currents.amps(volts, load_amps));
        if (line >= 0) line_amps[as_index(line)] = 0.0;
    };
    for (std::size_t k = 0; k < sources_; ++k) {
        Branch& branch = alone.branches[as_index(sources[k])];
        branch.emf = 1.0;
        put_alone(1 + k, topology.branch_line[as_index(sources[k])], 1.0 / branch.resistance);
        branch.emf = 0.0;
    }
    for (std::size_t p = 0; p < ports_count_; ++p) {
        load_amps[port_loads_[p]] = 1.0;
        put_alone(1 + sources_ + p, topology.load_line[port_loads_[p]], 1.0);
        load_amps[port_loads_[p]] = 0.0;
        for (std::size_t q = 0; q < ports_count_; ++q)
            ports_.ohms[q * ports_count_ + p] = -column(1 + sources_ + p)[values_ + q];
    }
    if (ports_count_ == 1)
        if (auto const* power = std::get_if<ConstantPower>(&ports_.laws[0])) {
            power_port_.emplace(*power, ports_.ohms[0]);
            for (std::size_t k = 0; k < sources_; ++k)
                open_volts_.data()[k] = column(1 + k)[values_];
        }
    bool const finite = std::all_of(columns_.data(), columns_.data() + columns_.size(),
                                    [](double value) { return std::isfinite(value); });
    if (!finite) status_ = Status::not_converged;
}

BANKWRIGHT_INLINE Status PortMap::settle_loads(double const* open_volts) {
    if (ports_count_ == 0) return Status::solved;
    if (ports_count_ == 1) {
        double const volts = *open_volts, ohms = ports_.ohms[0];
        if (auto const* square = std::get_if<SquareLaw>(&ports_.laws[0])) {
            port_amps_[0] = current_from(*square, volts, ohms);
            return Status::solved;
        }
    }
    ports_.open_volts.assign(open_volts, open_volts + ports_count_);
    PortCurrents const found = port_currents(ports_, SolveOptions{}.max_iterations);
    if (found.status == Status::solved) port_amps_ = found.amps;
    return found.status;
}

BANKWRIGHT_INLINE Status PortMap::solve(double const* emfs, double* answer, double* load_amps) {
    if (status_ != Status::solved) return status_;
    if (power_port_) {
        port_amps_[0] = columns_behind_power(columns_.data(), stride_, emfs, sources_, values_, *power_port_,
                                             open_volts_.data(), answer, set_);
        if (std::isnan(port_amps_[0])) return Status::no_operating_point;
    } else {
        sum_columns(columns_.data(), stride_, emfs, sources_, sums_.data(), set_);
        if (Status const status = settle_loads(sums_.data() + values_); status != Status::solved) return status;
        add_columns(column(1 + sources_), stride_, port_amps_.data(), ports_count_, sums_.data(), answer, values_,
                    set_);
    }
    for (std::size_t l : other_loads_)
        load_amps[l] = load_amps_[l];
    for (std::size_t p = 0; p < ports_count_; ++p)
        load_amps[port_loads_[p]] = port_amps_[p];
    return Status::solved;
}

} // namespace bankwright::solver
