// Bodies of port_map.hpp.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstring>
#include <numeric>
#include <variant>

#include "bankwright/solver/branch_currents.hpp"
#include "bankwright/solver/lane_register.hpp"
#include "bankwright/solver/linear_network.hpp"
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

// The loads whose current follows their voltage.
inline std::vector<std::size_t> loads_to_settle(Circuit const& circuit, Topology const& topology) {
    std::vector<std::size_t> loads;
    for (std::size_t l = 0; l < circuit.loads.size(); ++l)
        if (topology.load_feed[l] == Feed::port && !std::holds_alternative<ConstantCurrent>(circuit.loads[l].law))
            loads.push_back(l);
    return loads;
}

BANKWRIGHT_INLINE PortMap::PortMap(Circuit const& circuit, Topology const& topology, std::vector<int> const& sources,
                                   Watched const& watched, InstructionSet set)
    : set_(set), sources_(sources.size()), ports_count_(loads_to_settle(circuit, topology).size()),
      values_(watched.nodes.size() + watched.branches.size()),
      stride_((ports_count_ + values_ + lanes - 1) / lanes * lanes), port_loads_(loads_to_settle(circuit, topology)),
      columns_((1 + sources_ + ports_count_) * stride_ / lanes), sums_(stride_ / lanes) {
    auto const at = [](int i) { return static_cast<std::size_t>(i); };
    Circuit alone = circuit; // one source at a time
    for (int s : sources)
        alone.branches[at(s)].emf = 0.0;
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
            *value++ = branch_amps[at(b)];
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
        0, [&](int n) { return stays.volts[at(n)]; }, stays.branch_amps);

    std::vector<double> siemens(topology.lines.size(), 0.0);
    for (std::size_t b = 0; b < circuit.branches.size(); ++b) {
        if (topology.branch_line[b] >= 0) siemens[at(topology.branch_line[b])] = 1.0 / circuit.branches[b].resistance;
        alone.branches[b].emf = 0.0;
    }
    LinearNetwork const network(topology, siemens, SolveOptions{}.star_mesh_limit, SolveOptions{}.factor_limit);
    BranchCurrents const currents(alone, topology, network);
    std::vector<double> line_amps(topology.lines.size(), 0.0), load_amps(circuit.loads.size(), 0.0);
    auto const put_alone = [&](std::size_t number, int line, double amps) {
        if (line >= 0) line_amps[at(line)] = amps;
        auto const volts = network.volts(line_amps);
        put(
            number, [&](int n) { return volts[at(topology.merged[at(n)])]; }, currents.amps(volts, load_amps));
        if (line >= 0) line_amps[at(line)] = 0.0;
    };
    for (std::size_t k = 0; k < sources_; ++k) {
        Branch& branch = alone.branches[at(sources[k])];
        branch.emf = 1.0;
        put_alone(1 + k, topology.branch_line[at(sources[k])], 1.0 / branch.resistance);
        branch.emf = 0.0;
    }
    for (std::size_t p = 0; p < ports_count_; ++p) {
        load_amps[port_loads_[p]] = 1.0;
        put_alone(1 + sources_ + p, topology.load_line[port_loads_[p]], 1.0);
        load_amps[port_loads_[p]] = 0.0;
        for (std::size_t q = 0; q < ports_count_; ++q)
            ports_.ohms[q * ports_count_ + p] = -column(1 + sources_ + p)[values_ + q];
    }
    bool const finite = std::all_of(columns_.data(), columns_.data() + columns_.size(),
                                    [](double value) { return std::isfinite(value); });
    if (!finite) status_ = Status::not_converged;
}

BANKWRIGHT_INLINE Status PortMap::settle_loads(double const* open_volts) {
    if (ports_count_ == 0) return Status::solved;
    if (ports_count_ == 1) {
        double const volts = *open_volts, ohms = ports_.ohms[0];
        if (auto const* power = std::get_if<ConstantPower>(&ports_.laws[0])) {
            port_amps_[0] = current_from(*power, volts, ohms);
            return std::isnan(port_amps_[0]) ? Status::no_operating_point : Status::solved;
        }
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

// sums = the first column + factor by factor the next ones.
template <int width>
struct ColumnKernel {
    using V = typename Register<width>::type;
    static constexpr int registers = lanes / width;

    __attribute__((always_inline)) static void sum(double const* columns, std::size_t stride, double const* factors,
                                                   std::size_t count, double* sums) {
        constexpr std::size_t chains = width > 2 ? 2 : 1; // hides the latency of an addition
        for (std::size_t first = 0; first < stride; first += lanes) {
            double const* column = columns + first;
            V total[chains][registers];
#pragma GCC unroll 8
            for (int r = 0; r < registers; ++r) {
                total[0][r] = *reinterpret_cast<V const*>(column + r * width);
                if constexpr (chains == 2) total[1][r] = V{};
            }
            std::size_t k = 0;
            for (; k + chains <= count; k += chains)
#pragma GCC unroll 2
                for (std::size_t chain = 0; chain < chains; ++chain) {
                    column += stride;
#pragma GCC unroll 8
                    for (int r = 0; r < registers; ++r)
                        total[chain][r] += factors[k + chain] * *reinterpret_cast<V const*>(column + r * width);
                }
            for (; k < count; ++k) {
                column += stride;
#pragma GCC unroll 8
                for (int r = 0; r < registers; ++r)
                    total[0][r] += factors[k] * *reinterpret_cast<V const*>(column + r * width);
            }
#pragma GCC unroll 8
            for (int r = 0; r < registers; ++r) {
                if constexpr (chains == 2) total[0][r] += total[1][r];
                *reinterpret_cast<V*>(sums + first + r * width) = total[0][r];
            }
        }
    }

    // answer = sums + factor by factor the columns, of the first `values`.
    __attribute__((always_inline)) static void add(double const* columns, std::size_t stride, double const* factors,
                                                   std::size_t count, double const* sums, double* answer,
                                                   std::size_t values) {
        for (std::size_t i = 0; i < values; i += width) {
            V total = *reinterpret_cast<V const*>(sums + i);
            for (std::size_t k = 0; k < count; ++k)
                total += factors[k] * *reinterpret_cast<V const*>(columns + k * stride + i);
            if (i + width <= values)
                std::memcpy(answer + i, &total, sizeof total);
            else
                for (std::size_t lane = 0; i + lane < values; ++lane)
                    answer[i + lane] = total[lane];
        }
    }
};

#if defined(__x86_64__)
__attribute__((target("avx2,fma"))) BANKWRIGHT_INLINE void
sum_columns_avx2(double const* columns, std::size_t stride, double const* factors, std::size_t count, double* sums) {
    ColumnKernel<4>::sum(columns, stride, factors, count, sums);
}
__attribute__((target("avx512f"))) BANKWRIGHT_INLINE void
sum_columns_avx512(double const* columns, std::size_t stride, double const* factors, std::size_t count, double* sums) {
    ColumnKernel<8>::sum(columns, stride, factors, count, sums);
}
__attribute__((target("avx2,fma"))) BANKWRIGHT_INLINE void add_columns_avx2(double const* columns, std::size_t stride,
                                                                            double const* factors, std::size_t count,
                                                                            double const* sums, double* answer,
                                                                            std::size_t values) {
    ColumnKernel<4>::add(columns, stride, factors, count, sums, answer, values);
}
__attribute__((target("avx512f"))) BANKWRIGHT_INLINE void add_columns_avx512(double const* columns, std::size_t stride,
                                                                             double const* factors, std::size_t count,
                                                                             double const* sums, double* answer,
                                                                             std::size_t values) {
    ColumnKernel<8>::add(columns, stride, factors, count, sums, answer, values);
}
#endif

inline void sum_columns(double const* columns, std::size_t stride, double const* factors, std::size_t count,
                        double* sums, InstructionSet set) {
#if defined(__x86_64__)
    if (set == InstructionSet::avx2) return sum_columns_avx2(columns, stride, factors, count, sums);
    if (set == InstructionSet::avx512) return sum_columns_avx512(columns, stride, factors, count, sums);
#endif
    static_cast<void>(set);
    ColumnKernel<2>::sum(columns, stride, factors, count, sums);
}

inline void add_columns(double const* columns, std::size_t stride, double const* factors, std::size_t count,
                        double const* sums, double* answer, std::size_t values, InstructionSet set) {
#if defined(__x86_64__)
    if (set == InstructionSet::avx2) return add_columns_avx2(columns, stride, factors, count, sums, answer, values);
    if (set == InstructionSet::avx512) return add_columns_avx512(columns, stride, factors, count, sums, answer, values);
#endif
    static_cast<void>(set);
    ColumnKernel<2>::add(columns, stride, factors, count, sums, answer, values);
}

BANKWRIGHT_INLINE Status PortMap::solve(double const* emfs, double* answer, double* load_amps) {
    if (status_ != Status::solved) return status_;
    sum_columns(columns_.data(), stride_, emfs, sources_, sums_.data(), set_);
    if (Status const status = settle_loads(sums_.data() + values_); status != Status::solved) return status;
    add_columns(column(1 + sources_), stride_, port_amps_.data(), ports_count_, sums_.data(), answer, values_, set_);
    for (std::size_t l : other_loads_)
        load_amps[l] = load_amps_[l];
    for (std::size_t p = 0; p < ports_count_; ++p)
        load_amps[port_loads_[p]] = port_amps_[p];
    return Status::solved;
}

} // namespace bankwright::solver
