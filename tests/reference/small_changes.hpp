// What do the loads of a circuit draw, to 113 bits? Newton's method on their own unknowns (a voltage, a back voltage, a
// current) behind slow_solver.hpp; the answer whose small changes are looked at is given to it as a start.
#pragma once

#include "reference/slow_solver.hpp"

#include <cstddef>
#include <vector>

namespace slow {

using bankwright::solver::Circuit;
using bankwright::solver::ConstantCurrent;
using bankwright::solver::ConstantPower;
using bankwright::solver::LimitedSource;
using bankwright::solver::Load;
using bankwright::solver::SquareLaw;

// Volts and branch currents with nothing drawn, and what one ampere of each load adds.
struct Superposition {
    Answer rest;
    std::vector<Answer> each;

    explicit Superposition(Circuit const& circuit) {
        Circuit bare = circuit;
        bare.loads.clear();
        rest = slow::solve(bare);
        for (Load const& load : circuit.loads) {
            bare.loads.assign(1, {load.plus, load.minus, ConstantCurrent{1.0}});
            each.push_back(slow::solve(bare));
            for (std::size_t n = 0; n < rest.volts.size(); ++n)
                each.back().volts[n] -= rest.volts[n];
            for (std::size_t b = 0; b < rest.branch_amps.size(); ++b)
                each.back().branch_amps[b] -= rest.branch_amps[b];
        }
    }
};

inline Quad across(Answer const& answer, Load const& load) {
    return answer.volts[static_cast<std::size_t>(load.plus)] - answer.volts[static_cast<std::size_t>(load.minus)];
}

// One load's voltage and current as functions of its own unknown x, with their slopes.
struct Point {
    Quad volts, volts_slope, amps, amps_slope;
};
inline Point point_of(Load const& load, Quad x, double amps_near, double volts_near) {
    if (auto const* constant = std::get_if<ConstantCurrent>(&load.law)) return {x, 1, constant->amperes, 0};
    if (auto const* power = std::get_if<ConstantPower>(&load.law))
        return volts_near > 0.0 ? Point{x, 1, power->watts / x, -power->watts / (x * x)} : Point{x, 1, 0, 0};
    if (auto const* machine = std::get_if<SquareLaw>(&load.law)) { // x: its back voltage
        Quad const c = machine->coefficient, r = machine->resistance, d = machine->duty;
        if (volts_near <= 0.0) return {x, 1, 0, 0};
        return {(x + c * r * x * x) / d, (1 + 2 * c * r * x) / d, d * c * x * x, 2 * d * c * x};
    }
    auto const& source = std::get<LimitedSource>(load.law);
    if (amps_near >= 0.0) return {x, 1, 0, 0};
    if (amps_near <= -source.amperes * (1.0 - 1e-6)) return {x, 1, -Quad(source.amperes), 0};
    return {source.volts, 0, x, 1}; // x: its current
}

// Every volt and branch current with the loads near a known answer; `volts_near`, `amps_near` by load.
inline Answer with_loads(Circuit const& circuit, std::vector<double> const& volts_near,
                         std::vector<double> const& amps_near) {
    Superposition const parts(circuit);
    std::size_t const count = circuit.loads.size();
    std::vector<Quad> x(count), amps(count, 0);
    for (std::size_t k = 0; k < count; ++k) {
        Load const& load = circuit.loads[k];
        x[k] = volts_near[k];
        if (auto const* machine = std::get_if<SquareLaw>(&load.law))
            for (int i = 0; i < 200 && volts_near[k] > 0.0; ++i) { // E + c R E^2 = d V, by Newton's method
                Point const p = point_of(load, x[k], amps_near[k], volts_near[k]);
                if (machine->duty > 0.0) x[k] -= (p.volts - volts_near[k]) / p.volts_slope;
            }
        if (point_of(load, x[k], amps_near[k], volts_near[k]).volts_slope == 0) x[k] = amps_near[k];
    }
    for (int i = 0; i < 8; ++i) {
        Matrix m(count, std::vector<Quad>(count + 1, 0));
        for (std::size_t k = 0; k < count; ++k) {
            Point const own = point_of(circuit.loads[k], x[k], amps_near[k], volts_near[k]);
            m[k][k] += own.volts_slope;
            m[k][count] = across(parts.rest, circuit.loads[k]) - own.volts;
            for (std::size_t j = 0; j < count; ++j) {
                Point const other = point_of(circuit.loads[j], x[j], amps_near[j], volts_near[j]);
                Quad const per_ampere = across(parts.each[j], circuit.loads[k]);
                m[k][j] -= per_ampere * other.amps_slope;
                m[k][count] += per_ampere * other.amps;
            }
        }
        if (count == 0) break;
        std::vector<Quad> const step = eliminate(m);
        for (std::size_t k = 0; k < count; ++k)
            x[k] += step[k];
    }
    Answer all = parts.rest;
    for (std::size_t k = 0; k < count; ++k) {
        Quad const drawn = point_of(circuit.loads[k], x[k], amps_near[k], volts_near[k]).amps;
        for (std::size_t n = 0; n < all.volts.size(); ++n)
            all.volts[n] += drawn * parts.each[k].volts[n];
        for (std::size_t b = 0; b < all.branch_amps.size(); ++b)
            all.branch_amps[b] += drawn * parts.each[k].branch_amps[b];
    }
    return all;
}

} // namespace slow
