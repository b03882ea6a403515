// A step of an ordinary differential equation of the fifth order, with a fourth one beside it for the error, and all
// that lies inside the step: which shares of which slopes?
//
// Dormand and Prince, Journal of Computational and Applied Mathematics 6 (1980) 19; the shares inside a step (fourth
// order) by Shampine, Mathematics of Computation 46 (1986) 135 [both read as SciPy's RK45 states them]. The slope at
// the end of a step is the first of the next.
#pragma once

#include <array>
#include <cstddef>

namespace bankwright::numeric::dormand_prince {

inline constexpr std::size_t slopes = 7;
inline constexpr double order = 5.0; // of what an error of a step goes by

using Shares = std::array<double, slopes>;

// Where each slope is taken: y + h * (shares of those before it). The last is the end of the step, so that its shares
// are those of the step itself. The second slope has no part in it.
inline constexpr std::array<Shares, slopes> to_slope{{
    {},
    {1.0 / 5},
    {3.0 / 40, 9.0 / 40},
    {44.0 / 45, -56.0 / 15, 32.0 / 9},
    {19372.0 / 6561, -25360.0 / 2187, 64448.0 / 6561, -212.0 / 729},
    {9017.0 / 3168, -355.0 / 33, 46732.0 / 5247, 49.0 / 176, -5103.0 / 18656},
    {35.0 / 384, 0.0, 500.0 / 1113, 125.0 / 192, -2187.0 / 6784, 11.0 / 84},
}};

// What the fifth order differs by from the fourth.
inline constexpr Shares error{-71.0 / 57600, 0.0, 71.0 / 16695, -71.0 / 1920, 17253.0 / 339200, -22.0 / 525, 1.0 / 40};

// From the step's start to this part of it, 0..1.
constexpr Shares inside(double part) {
    constexpr std::array<std::array<double, 4>, slopes> powers{{
        {1.0, -8048581381.0 / 2820520608, 8663915743.0 / 2820520608, -12715105075.0 / 11282082432},
        {},
        {0.0, 131558114200.0 / 32700410799, -68118460800.0 / 10900136933, 87487479700.0 / 32700410799},
        {0.0, -1754552775.0 / 470086768, 14199869525.0 / 1410260304, -10690763975.0 / 1880347072},
        {0.0, 127303824393.0 / 49829197408, -318862633887.0 / 49829197408, 701980252875.0 / 199316789632},
        {0.0, -282668133.0 / 205662961, 2019193451.0 / 616988883, -1453857185.0 / 822651844},
        {0.0, 40617522.0 / 29380423, -110615467.0 / 29380423, 69997945.0 / 29380423},
    }};
    Shares shares{};
    for (std::size_t k = 0; k < slopes; ++k)
        shares[k] = part * (powers[k][0] + part * (powers[k][1] + part * (powers[k][2] + part * powers[k][3])));
    return shares;
}

} // namespace bankwright::numeric::dormand_prince
