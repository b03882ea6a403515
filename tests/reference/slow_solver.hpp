// Another solver, on purpose unlike ours: modified nodal analysis on one dense matrix with joins as unknown currents,
// complete pivoting, plain loops, 113-bit arithmetic. Linear circuits only (branches, joins, constant-current loads).
#pragma once

#include "bankwright/solver/circuit.hpp"

#include <cstddef>
#include <utility>
#include <vector>

namespace slow {

__extension__ typedef __float128 Quad; // at 64 bits, 18 decades of resistance leave nothing
using Matrix = std::vector<std::vector<Quad>>;

inline Quad magnitude(Quad x) { return x < 0 ? -x : x; }

// Gauss with complete pivoting; the last column is the right-hand side. The matrix must not be singular.
inline std::vector<Quad> eliminate(Matrix m) {
    std::size_t const n = m.size();
    std::vector<std::size_t> column(n);
    for (std::size_t i = 0; i < n; ++i)
        column[i] = i;
    for (std::size_t k = 0; k < n; ++k) {
        std::size_t row = k, best = k;
        for (std::size_t i = k; i < n; ++i)
            for (std::size_t j = k; j < n; ++j)
                if (magnitude(m[i][j]) > magnitude(m[row][best])) row = i, best = j;
        std::swap(m[k], m[row]);
        std::swap(column[k], column[best]);
        for (auto& r : m)
            std::swap(r[k], r[best]);
        for (std::size_t i = k + 1; i < n; ++i) {
            Quad const factor = m[i][k] / m[k][k];
            if (factor == 0) continue;
            for (std::size_t j = k; j <= n; ++j)
                m[i][j] -= factor * m[k][j];
        }
    }
    std::vector<Quad> x(n);
    for (std::size_t k = n; k-- > 0;) {
        Quad sum = m[k][n];
        for (std::size_t j = k + 1; j < n; ++j)
            sum -= m[k][j] * x[column[j]];
        x[column[k]] = sum / m[k][k];
    }
    return x;
}

struct Answer {
    std::vector<int> group; // by node: lowest node it is connected to by branches and joins
    std::vector<Quad> volts;
    std::vector<Quad> branch_amps;
};

// Lowest node that each node reaches; repeated sweeps until nothing changes.
inline std::vector<int> reach(int nodes, std::vector<std::pair<int, int>> const& edges) {
    std::vector<int> low(static_cast<std::size_t>(nodes));
    for (int n = 0; n < nodes; ++n)
        low[static_cast<std::size_t>(n)] = n;
    for (bool moved = true; moved;) {
        moved = false;
        for (auto [a, b] : edges) {
            int& x = low[static_cast<std::size_t>(a)];
            int& y = low[static_cast<std::size_t>(b)];
            if (x == y) continue;
            x = y = x < y ? x : y;
            moved = true;
        }
    }
    return low;
}

inline Answer solve(bankwright::solver::Circuit const& c) {
    auto const at = [](int i) { return static_cast<std::size_t>(i); };
    std::vector<std::pair<int, int>> wires, joined;
    std::vector<std::size_t> used; // joins that do not close a ring of joins
    for (std::size_t j = 0; j < c.joins.size(); ++j) {
        auto const before = reach(c.nodes, joined);
        if (before[at(c.joins[j].from)] == before[at(c.joins[j].to)]) continue;
        used.push_back(j);
        joined.emplace_back(c.joins[j].from, c.joins[j].to);
    }
    wires = joined;
    for (auto const& b : c.branches)
        wires.emplace_back(b.from, b.to);

    Answer answer;
    answer.group = reach(c.nodes, wires);
    std::size_t const nodes = at(c.nodes), size = nodes + used.size();
    Matrix m(size, std::vector<Quad>(size + 1, 0));
    for (auto const& b : c.branches) {
        Quad const g = Quad(1) / Quad(b.resistance);
        m[at(b.from)][at(b.from)] += g, m[at(b.from)][at(b.to)] -= g, m[at(b.from)][size] -= g * Quad(b.emf);
        m[at(b.to)][at(b.to)] += g, m[at(b.to)][at(b.from)] -= g, m[at(b.to)][size] += g * Quad(b.emf);
    }
    for (std::size_t k = 0; k < used.size(); ++k) {
        auto const& join = c.joins[used[k]];
        m[at(join.from)][nodes + k] += 1, m[at(join.to)][nodes + k] -= 1;
        m[nodes + k][at(join.from)] += 1, m[nodes + k][at(join.to)] -= 1;
    }
    for (auto const& l : c.loads) {
        if (answer.group[at(l.plus)] != answer.group[at(l.minus)]) continue;
        Quad const amps = std::get<bankwright::solver::ConstantCurrent>(l.law).amperes;
        m[at(l.plus)][size] -= amps, m[at(l.minus)][size] += amps;
    }
    for (int n = 0; n < c.nodes; ++n) { // one 0 V node an island
        bool const home = answer.group[at(n)] == answer.group[at(c.reference)];
        if (n != (home ? c.reference : answer.group[at(n)])) continue;
        m[at(n)].assign(size + 1, 0);
        m[at(n)][at(n)] = 1;
    }
    answer.volts = eliminate(std::move(m));
    answer.volts.resize(nodes);
    for (auto const& b : c.branches)
        answer.branch_amps.push_back((answer.volts[at(b.from)] - answer.volts[at(b.to)] + Quad(b.emf)) /
                                     Quad(b.resistance));
    return answer;
}

} // namespace slow
