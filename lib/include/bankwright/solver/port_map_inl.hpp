// Bodies of port_map.hpp.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstring>
#include <numeric>
#include <variant>

#include "bankwright/solver/lane_register.hpp"
#include "bankwright/solver/port_formula.hpp"
#include "bankwright/solver/port_map.hpp"
#include "bankwright/solver/solve.hpp"

namespace bankwright::solver {

BANKWRIGHT_INLINE Watched everything(Circuit const& circuit) {
    Watched all;
    all.nodes.resize(static_cast<std::size_t>(circuit.nodes));
    all.branches.resize(circuit.branches.size());
    std::iota(all.nodes.begin(), all.nodes.end(), 0);
    std::iota(all.branches.begin(), all.branches.end(), 0);
    return all;
}

BANKWRIGHT_INLINE PortMap::PortMap(Circuit const& circuit, Topology const& topology, std::vector<int> const& sources,
                                   Watched const& watched)
    : sources_(sources.size()), values_(watched.nodes.size() + watched.branches.size()),
      padded_((values_ + block - 1) / block * block) {
    auto const at = [](int i) { return static_cast<std::size_t>(i); };
    Circuit alone = circuit; // one source at a time
    for (int s : sources)
        alone.branches[at(s)].emf = 0.0;
    for (std::size_t l = 0; l < circuit.loads.size(); ++l)
        if (topology.load_feed[l] == Feed::port && !std::holds_alternative<ConstantCurrent>(circuit.loads[l].law)) {
            port_loads_.push_back(l);
            ports_.laws.push_back(circuit.loads[l].law);
            alone.loads[l].law = ConstantCurrent{0.0};
        }
    std::size_t const ports = port_loads_.size();
    ports_.open_volts.assign(ports, 0.0);
    ports_.ohms.assign(ports * ports, 0.0);
    port_amps_.assign(ports, 0.0);

    auto const across = [&](Solution const& s, std::size_t port) {
        Load const& load = circuit.loads[port_loads_[port]];
        return s.volts[at(load.plus)] - s.volts[at(load.minus)];
    };
    auto const column = [&] { // of `alone` as it stands
        Solution const s = bankwright::solver::solve(alone, topology);
        if (s.status != Status::solved) {
            status_ = s.status;
            columns_.resize(columns_.size() + padded_, 0.0);
            return Solution{s.status, std::vector<double>(at(circuit.nodes), 0.0), {}, {}, {}, {}};
        }
        for (int n : watched.nodes)
            columns_.push_back(s.volts[at(n)]);
        for (int b : watched.branches)
            columns_.push_back(s.branch_amps[at(b)]);
        columns_.resize(columns_.size() + padded_ - values_, 0.0);
        return s;
    };
    open_rows_.assign(ports * (sources_ + 1), 0.0);
    auto const open_column = [&](std::size_t place) {
        Solution const s = column();
        for (std::size_t p = 0; p < ports; ++p)
            open_rows_[p * (sources_ + 1) + place] = across(s, p);
        return s;
    };
    load_amps_ = open_column(0).load_amps;
    load_amps_.resize(circuit.loads.size(), 0.0);
    for (Branch& b : alone.branches)
        b.emf = 0.0;
    for (Load& l : alone.loads)
        l.law = ConstantCurrent{0.0};
    for (std::size_t k = 0; k < sources_; ++k) {
        auto& emf = alone.branches[at(sources[k])].emf;
        emf = 1.0;
        open_column(k + 1);
        emf = 0.0;
    }
    for (std::size_t p = 0; p < ports; ++p) {
        auto& law = alone.loads[port_loads_[p]].law;
        law = ConstantCurrent{1.0};
        Solution const s = column();
        for (std::size_t q = 0; q < ports; ++q)
            ports_.ohms[q * ports + p] = -across(s, q);
        law = ConstantCurrent{0.0};
    }
}

BANKWRIGHT_INLINE Status PortMap::settle_loads() {
    if (port_amps_.empty()) return Status::solved;
    if (port_amps_.size() == 1) {
        double const volts = ports_.open_volts[0], ohms = ports_.ohms[0];
        if (auto const* power = std::get_if<ConstantPower>(&ports_.laws[0])) {
            port_amps_[0] = current_from(*power, volts, ohms);
            return std::isnan(port_amps_[0]) ? Status::no_operating_point : Status::solved;
        }
        if (auto const* square = std::get_if<SquareLaw>(&ports_.laws[0])) {
            port_amps_[0] = current_from(*square, volts, ohms);
            return Status::solved;
        }
    }
    PortCurrents const found = port_currents(ports_, SolveOptions{}.max_iterations);
    if (found.status == Status::solved) port_amps_ = found.amps;
    return found.status;
}

BANKWRIGHT_INLINE Status PortMap::solve(double const* emfs, double* answer, double* load_amps) {
    if (status_ != Status::solved) return status_;
    std::size_t const ports = port_amps_.size();
    for (std::size_t p = 0; p < ports; ++p) {
        double const* row = open_rows_.data() + p * (sources_ + 1);
        double sum = row[0];
        for (std::size_t s = 0; s < sources_; ++s)
            sum += emfs[s] * row[s + 1];
        ports_.open_volts[p] = sum;
    }
    if (Status const status = settle_loads(); status != Status::solved) return status;

    using Pair = Register<2>::type;
    auto const pair = [](double const* from) {
        Pair two;
        std::memcpy(&two, from, sizeof two);
        return two;
    };
    for (std::size_t first = 0; first < values_; first += block) { // a block of answers stays in registers
        double const* column = columns_.data() + first;
        Pair low = pair(column), high = pair(column + 2);
        auto const add = [&](double factor) {
            column += padded_;
            low += factor * pair(column);
            high += factor * pair(column + 2);
        };
        for (std::size_t s = 0; s < sources_; ++s)
            add(emfs[s]);
        for (std::size_t p = 0; p < ports; ++p)
            add(port_amps_[p]);
        double const sum[block] = {low[0], low[1], high[0], high[1]};
        std::size_t const last = std::min(block, values_ - first);
        for (std::size_t k = 0; k < last; ++k)
            answer[first + k] = sum[k];
    }
    for (std::size_t l = 0; l < load_amps_.size(); ++l)
        load_amps[l] = load_amps_[l];
    for (std::size_t p = 0; p < ports; ++p)
        load_amps[port_loads_[p]] = port_amps_[p];
    return Status::solved;
}

} // namespace bankwright::solver
