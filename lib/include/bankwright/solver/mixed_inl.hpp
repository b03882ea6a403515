// Bodies of mixed.hpp.
#pragma once

#include "bankwright/solver/lanes/lane_register.hpp"
#include "bankwright/solver/mixed.hpp"
#include "bankwright/solver/solve.hpp"
#include "bankwright/solver/validate.hpp"

#include <algorithm>
#include <cstdint>
#include <limits>
#include <stdexcept>

namespace bankwright::solver {

inline constexpr int mixed_lanes = 8; // a triangle of 29 nodes then stays in a first-level cache
inline constexpr int most_mixed_nodes = 64;

// Eight circuits. Nodes keep their numbers; the reference of each lane is node 0 and node 0 takes its number.
struct MixedBlock {
    alignas(64) double siemens[most_mixed_nodes * (most_mixed_nodes - 1) / 2 * mixed_lanes];
    alignas(64) double volts[most_mixed_nodes * mixed_lanes]; // injections first
    std::uint64_t near[most_mixed_nodes];                     // by node: what any lane connects it to
    alignas(64) double least[mixed_lanes];                    // [S] smallest sum at any pivot: 0 on an island
    int nodes;

    static int slot(int a, int b) {
        int const high = a > b ? a : b, low = a > b ? b : a;
        return (high * (high - 1) / 2 + low) * mixed_lanes;
    }

    void clear(int count) {
        nodes = count;
        std::fill_n(siemens, slot(nodes, 0), 0.0);
        std::fill_n(volts, nodes * mixed_lanes, 0.0);
        std::fill_n(near, nodes, std::uint64_t{0});
        std::fill_n(least, mixed_lanes, std::numeric_limits<double>::infinity());
    }

    static int row(Circuit const& c, int node) { return node == c.reference ? 0 : node == 0 ? c.reference : node; }

    void fill(int lane, Circuit const& c) {
        for (Branch const& b : c.branches) {
            if (b.from == b.to) continue;
            int const from = row(c, b.from), to = row(c, b.to);
            double const g = 1.0 / b.resistance, amps = g * b.emf;
            siemens[slot(from, to) + lane] += g;
            near[from] |= std::uint64_t{1} << to;
            near[to] |= std::uint64_t{1} << from;
            volts[from * mixed_lanes + lane] -= amps;
            volts[to * mixed_lanes + lane] += amps;
        }
        for (Load const& l : c.loads) {
            double const amps = std::get<ConstantCurrent>(l.law).amperes;
            volts[row(c, l.plus) * mixed_lanes + lane] -= amps;
            volts[row(c, l.minus) * mixed_lanes + lane] += amps;
        }
        for (int n = c.nodes; n < nodes; ++n) { // what this circuit lacks hangs on its reference
            siemens[slot(n, 0) + lane] = 1.0;
            near[n] |= 1u;
            near[0] |= std::uint64_t{1} << n;
        }
    }
};

template <int width>
struct MixedKernel {
    using V = typename Register<width>::type;

    __attribute__((always_inline)) static V& at(double* values) { return *reinterpret_cast<V*>(values); }

    __attribute__((always_inline)) static void solve(MixedBlock& m) {
        int order[most_mixed_nodes], neighbours[most_mixed_nodes * most_mixed_nodes], degree[most_mixed_nodes];
        std::uint64_t left =
            (m.nodes == 64 ? ~std::uint64_t{0} : (std::uint64_t{1} << m.nodes) - 1) & ~std::uint64_t{1};
        int const steps = m.nodes - 1;
        for (int step = 0; step < steps; ++step) {
            int best = -1, fewest = most_mixed_nodes + 1;
            for (std::uint64_t some = left; some != 0; some &= some - 1) {
                int const n = __builtin_ctzll(some), count = __builtin_popcountll(m.near[n]);
                if (count < fewest) best = n, fewest = count;
            }
            left &= ~(std::uint64_t{1} << best);
            int* const list = neighbours + step * most_mixed_nodes;
            int count = 0;
            std::uint64_t const around = m.near[best];
            for (std::uint64_t some = around; some != 0; some &= some - 1) {
                int const n = __builtin_ctzll(some);
                list[count++] = n;
                m.near[n] = (m.near[n] | around) & ~(std::uint64_t{1} << best) & ~(std::uint64_t{1} << n);
            }
            order[step] = best;
            degree[step] = count;
            eliminate(m, best, list, count);
        }
        for (int lane = 0; lane < mixed_lanes; lane += width)
            at(m.volts + lane) = V{};
        for (int step = steps; step-- > 0;) {
            int const k = order[step];
            int const* const list = neighbours + step * most_mixed_nodes;
            for (int lane = 0; lane < mixed_lanes; lane += width) {
                V sum = at(m.volts + k * mixed_lanes + lane);
                for (int i = 0; i < degree[step]; ++i)
                    sum += at(m.siemens + MixedBlock::slot(k, list[i]) + lane) *
                           at(m.volts + list[i] * mixed_lanes + lane);
                at(m.volts + k * mixed_lanes + lane) = sum;
            }
        }
    }

    // Leaves shares in place of the pivot's conductances, its injection over its sum in place of its injection.
    __attribute__((always_inline)) static void eliminate(MixedBlock& m, int k, int const* list, int count) {
        int slots[most_mixed_nodes];
        for (int i = 0; i < count; ++i)
            slots[i] = MixedBlock::slot(k, list[i]);
        for (int lane = 0; lane < mixed_lanes; lane += width) {
            double* const c = m.siemens + lane;
            double* const b = m.volts + lane;
            V sum{};
            for (int i = 0; i < count; ++i)
                sum += at(c + slots[i]);
            V& least = at(m.least + lane);
            least = sum < least ? sum : least;
            V const inverse = sum > 0.0 ? 1.0 / sum : V{};
            V const injected = at(b + k * mixed_lanes);
            at(b + k * mixed_lanes) = injected * inverse;
            for (int i = 0; i < count; ++i) {
                V const share = at(c + slots[i]) * inverse;
                at(b + list[i] * mixed_lanes) += share * injected;
                int const first = list[i] * (list[i] - 1) / 2; // list[j] < list[i]
                for (int j = 0; j < i; ++j)
                    at(c + (first + list[j]) * mixed_lanes) += share * at(c + slots[j]);
            }
            for (int i = 0; i < count; ++i)
                at(c + slots[i]) *= inverse;
        }
    }
};

#if defined(__x86_64__)
__attribute__((target("avx2,fma,popcnt,bmi"))) BANKWRIGHT_INLINE void solve_mixed_avx2(MixedBlock& block) {
    MixedKernel<4>::solve(block);
}
__attribute__((target("avx512f,popcnt,bmi"))) BANKWRIGHT_INLINE void solve_mixed_avx512(MixedBlock& block) {
    MixedKernel<8>::solve(block);
}
#endif

inline void solve_block(MixedBlock& block, InstructionSet set) {
#if defined(__x86_64__)
    if (set == InstructionSet::avx2) return solve_mixed_avx2(block);
    if (set == InstructionSet::avx512) return solve_mixed_avx512(block);
#endif
    static_cast<void>(set);
    MixedKernel<2>::solve(block);
}

inline bool fits_lanes(Circuit const& c) {
    return c.nodes <= most_mixed_nodes && c.joins.empty() &&
           std::all_of(c.loads.begin(), c.loads.end(),
                       [](Load const& l) { return std::holds_alternative<ConstantCurrent>(l.law); });
}

BANKWRIGHT_INLINE std::size_t solve_mixed(Circuit const* circuits, std::size_t count, int width, double* volts,
                                          Status* statuses, InstructionSet set) {
    if (!runs_here(set)) set = InstructionSet::portable;
    auto const wide = static_cast<std::size_t>(std::max(width, 0));
    for (std::size_t i = 0; i < count; ++i)
        if (circuits[i].nodes > width) throw std::invalid_argument("a circuit has more nodes than a row has room for");
    std::fill_n(volts, count * wide, std::numeric_limits<double>::quiet_NaN());
    auto const alone = [&](std::size_t i) {
        Solution const solution = solve(circuits[i]);
        statuses[i] = solution.status;
        if (solution.status == Status::solved)
            std::copy(solution.volts.begin(), solution.volts.end(), volts + i * wide);
    };
    MixedBlock block;
    std::size_t waiting[mixed_lanes];
    int used = 0;
    std::size_t side_by_side = 0;
    auto const flush = [&] {
        if (used == 0) return;
        int nodes = 1;
        for (int lane = 0; lane < used; ++lane)
            nodes = std::max(nodes, circuits[waiting[lane]].nodes);
        block.clear(nodes);
        for (int lane = 0; lane < mixed_lanes; ++lane) // what is not used holds what the first one does
            block.fill(lane, circuits[waiting[lane < used ? lane : 0]]);
        solve_block(block, set);
        for (int lane = 0; lane < used; ++lane) {
            std::size_t const i = waiting[lane];
            Circuit const& c = circuits[i];
            if (!(block.least[lane] > 0.0)) {
                alone(i);
                continue;
            }
            ++side_by_side;
            statuses[i] = Status::solved;
            for (int n = 0; n < c.nodes; ++n)
                volts[i * wide + static_cast<std::size_t>(n)] = block.volts[MixedBlock::row(c, n) * mixed_lanes + lane];
        }
        used = 0;
    };
    for (std::size_t i = 0; i < count; ++i) {
        if (!is_valid(circuits[i])) {
            statuses[i] = Status::bad_circuit;
        } else if (!fits_lanes(circuits[i])) {
            alone(i);
        } else {
            waiting[used++] = i;
            if (used == mixed_lanes) flush();
        }
    }
    flush();
    return side_by_side;
}

} // namespace bankwright::solver
