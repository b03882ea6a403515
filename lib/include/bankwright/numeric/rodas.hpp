// A step of a stiff ordinary differential equation of the fourth order, with a third one beside it for the error: which
// shares of which stages?
//
// RODAS: Hairer and Wanner, Solving Ordinary Differential Equations II, section IV.7 [read as six public codes state
// it, which agree]. With W = 1 / (gamma h) - J, J being the slope's derivative at the start, stage i solves
//
//     W k[i] = slope(y + sum of at[i][j] k[j]) + (1 / h) sum of back[i][j] k[j].
//
// Each stage begins where the sum stands; at the last one that is the step's end but for k[5], which is its error.
#pragma once

#include <array>
#include <cstddef>

namespace bankwright::numeric::rodas {

inline constexpr std::size_t stages = 6;
inline constexpr double order = 4.0; // of what an error of a step goes by
inline constexpr double gamma = 0.25;

using Shares = std::array<double, stages>;

inline constexpr std::array<Shares, stages> at{{
    {},
    {1.544},
    {0.9466785280815826, 0.2557011698983284},
    {3.314825187068521, 2.896124015972201, 0.9986419139977817},
    {1.221224509226641, 6.019134481288629, 12.53708332932087, -0.6878860361058950},
    {1.221224509226641, 6.019134481288629, 12.53708332932087, -0.6878860361058950, 1.0},
}};
inline constexpr std::array<Shares, stages> back{{
    {},
    {-5.6688},
    {-2.430093356833875, -0.2063599157091915},
    {-0.1073529058151375, -9.594562251023355, -20.47028614809616},
    {7.496443313967647, -10.24680431464352, -33.99990352819905, 11.70890893206160},
    {8.083246795921522, -7.981132988064893, -31.52159432874371, 16.31930543123136, -6.058818238834054},
}};

} // namespace bankwright::numeric::rodas
