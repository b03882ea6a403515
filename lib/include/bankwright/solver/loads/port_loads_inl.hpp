// Bodies of port_loads.hpp.
#pragma once

#include "bankwright/solver/load_laws.hpp"
#include "bankwright/solver/loads/constant_power.hpp"
#include "bankwright/solver/loads/port_loads.hpp"
#include "bankwright/solver/loads/rising_loads.hpp"

#include <cmath>
#include <limits>

namespace bankwright::solver {

namespace internal {

// V^2 - V0 V + Z P = 0, the larger root. Just at the fold rounding decides; a few ulps are given to the load.
inline PortCurrents single_constant_power(double watts, double open_volts, double ohms) {
    PortCurrents answer{Status::solved, {0.0}, 0, 1.0, 1.0};
    if (!(open_volts > 0.0) || watts == 0.0) return answer;
    double const half = 0.5 * open_volts, square = half * half;
    double const rest = square - ohms * watts;
    if (rest < -8.0 * std::numeric_limits<double>::epsilon() * square) {
        answer.status = Status::no_operating_point;
        answer.reachable_share = square / (ohms * watts);
        return answer;
    }
    answer.amps[0] = watts / (half + std::sqrt(std::max(rest, 0.0)));
    return answer;
}

// One attempt with the constant powers times `share`. `less` is the answer to a smaller share, to climb on from.
inline PortCurrents port_currents_at(Ports const& ports, double share, int max_iterations, PortCurrents const& less) {
    std::vector<std::size_t> rising, powered, idle;
    for (std::size_t port = 0; port < ports.laws.size(); ++port) {
        auto const* power = std::get_if<ConstantPower>(&ports.laws[port]);
        if (!power)
            rising.push_back(port);
        else if (power->watts > 0.0)
            idle.push_back(port);
    }
    PortCurrents answer;
    // A load draws once it sees a voltage; that of the others can bring it one, so idle ports are asked again.
    for (bool woken = true; woken;) {
        ConstantPowerLoads loads(ports, rising, powered, max_iterations);
        std::vector<double> start;
        for (std::size_t port : powered)
            start.push_back(less.amps.empty() ? 0.0 : less.amps[port]);
        answer.status = loads.find(share, start);
        answer.iterations += loads.iterations();
        if (answer.status != Status::solved) return answer;
        answer.slack = powered.empty() ? 1.0 : loads.slack();
        answer.amps.assign(ports.laws.size(), 0.0);
        for (std::size_t i = 0; i < rising.size(); ++i)
            answer.amps[rising[i]] = loads.around().rising_amps[i];
        for (std::size_t i = 0; i < powered.size(); ++i)
            answer.amps[powered[i]] = loads.amps()[i];

        woken = false;
        std::vector<std::size_t> still_idle;
        for (std::size_t port : idle) {
            double volts = ports.open_volts[port], scale = std::abs(volts);
            for (std::size_t other = 0; other < ports.laws.size(); ++other) {
                volts -= ports.ohm(port, other) * answer.amps[other];
                scale += std::abs(ports.ohm(port, other) * answer.amps[other]);
            }
            bool const wakes = volts > 1e-13 * scale;
            (wakes ? powered : still_idle).push_back(port);
            woken = woken || wakes;
        }
        idle = still_idle;
    }
    return answer;
}

// The share of the constant powers at which the answers end, between what was solved and what was not. Each try climbs
// on from the last that was solved. Aiming at the fold by the slack's square, which falls to zero in a straight line,
// takes fewer tries, but nearer to the fold, where each takes more steps: no fewer in all.
inline PortCurrents at_the_fold(Ports const& ports, int max_iterations) {
    PortCurrents less;
    int iterations = 0;
    double low = 0.0, high = 1.0;
    while (high - low > 1e-10 * high && high >= 1e-15) {
        double const share = 0.5 * (low + high);
        PortCurrents const tried = port_currents_at(ports, share, max_iterations, less);
        iterations += tried.iterations;
        if (tried.status == Status::solved)
            low = share, less = tried;
        else
            high = share;
    }
    return {Status::no_operating_point, {}, iterations, low, 0.0};
}

} // namespace internal

BANKWRIGHT_INLINE PortCurrents port_currents(Ports const& ports, int max_iterations) {
    if (ports.laws.size() == 1) { // behind one port every law has a formula
        double const volts = ports.open_volts[0], ohms = ports.ohms[0];
        if (auto const* power = std::get_if<ConstantPower>(&ports.laws[0]))
            return internal::single_constant_power(power->watts, volts, ohms);
        if (auto const* square = std::get_if<SquareLaw>(&ports.laws[0]))
            return {Status::solved, {current_from(*square, volts, ohms)}, 0, 1.0, 1.0};
    }

    PortCurrents answer = internal::port_currents_at(ports, 1.0, max_iterations, {});
    if (answer.status != Status::no_operating_point) return answer;
    PortCurrents fold = internal::at_the_fold(ports, max_iterations);
    fold.iterations += answer.iterations;
    return fold;
}

} // namespace bankwright::solver
