// What does a load take far below its own voltage? What is said of it, a current or a power, holds near that voltage
// only: electronics cut out, lamps dim, and no load drives a current backwards through itself. A fault that starves one
// is looked at as if it took less, as the square of the voltage, common practice, no source.
#pragma once

#include "bankwright/analyses/trace/faults.hpp"
#include "bankwright/solver/solve.hpp"

#include <cmath>
#include <cstddef>
#include <variant>
#include <vector>

namespace bankwright::internal::expecting {

inline constexpr double starving = 0.7; // of its usual voltage, and below

// Not what somebody has read that the motor takes.
inline bool is_starved(FaultyWiring const& wiring, std::size_t load, double volts) {
    if (wiring.current_is_stated || load >= wiring.usual_volts.size()) return false;
    auto const& law = wiring.circuit.loads[load].law;
    bool const is_stiff =
        std::holds_alternative<solver::ConstantCurrent>(law) || std::holds_alternative<solver::ConstantPower>(law);
    return is_stiff && wiring.usual_volts[load] > 0.0 && volts < starving * wiring.usual_volts[load];
}

inline solver::Law softened(solver::Law const& law, double usual_volts) {
    if (auto const* current = std::get_if<solver::ConstantCurrent>(&law))
        return solver::SquareLaw{current->amperes / (usual_volts * usual_volts), 0.0, 1.0};
    if (auto const* power = std::get_if<solver::ConstantPower>(&law))
        return solver::SquareLaw{power->watts / std::pow(usual_volts, 3), 0.0, 1.0};
    return law;
}

inline constexpr double doubt_of_starved = 0.3; // of its current, one standard deviation [from memory]

// Softens the loads that this solution starves, all of them where there is none; by load, which.
inline std::vector<char> soften_starved(FaultyWiring const& wiring, solver::Solution const& solution,
                                        solver::Circuit& circuit) {
    bool const is_solved = solution.status == solver::Status::solved;
    std::vector<char> starved(circuit.loads.size(), 0);
    for (std::size_t l = 0; l < circuit.loads.size(); ++l) {
        auto& load = circuit.loads[l];
        double const volts = is_solved ? solution.volts[static_cast<std::size_t>(load.plus)] -
                                             solution.volts[static_cast<std::size_t>(load.minus)]
                                       : 0.0;
        if (!is_starved(wiring, l, volts)) continue;
        load.law = softened(load.law, wiring.usual_volts[l]);
        starved[l] = 1;
    }
    return starved;
}

} // namespace bankwright::internal::expecting
