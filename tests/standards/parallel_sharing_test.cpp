// How batteries in parallel share a load, against formulas that know no network.
#include "standards/sharing_answers.hpp"

#include <cmath>
#include <numeric>

#include <doctest/doctest.h>

namespace {

// Both leads on battery N. Of neighbors R (i[k+1] - i[k]) = (rp + rn) (i[1] + ... + i[k]), so that with
// cosh t = 1 + (rp + rn) / 2R: i[k] / I = (sinh k t - sinh (k - 1) t) / sinh N t.
double share_at_one_end(int batteries, double link, int k) {
    double const t = std::acosh(1.0 + link);
    return (std::sinh(k * t) - std::sinh((k - 1) * t)) / std::sinh(batteries * t);
}

// Positive on battery N, negative on battery 1, rp = rn = r: R (i[k+1] - i[k]) = r (2 (i[1] + ... + i[k]) - I), so that
// i[k] / I = (sinh (k - N/2) t - sinh (k - 1 - N/2) t) / (2 sinh N t / 2).
double share_on_the_diagonal(int batteries, double link, int k) {
    double const t = std::acosh(1.0 + link), half = 0.5 * batteries;
    return (std::sinh((k - half) * t) - std::sinh((k - 1 - half) * t)) / (2.0 * std::sinh(half * t));
}

std::vector<double> row(int batteries, double link, char const* main_leads) {
    return standards::shares_of_row({batteries, link, link, main_leads});
}

double const links[] = {0.001, 0.01, 0.05, 0.075, 0.1, 0.2, 1.0, 5.0};

} // namespace

// acosh of 1 + r / R keeps eps R / r of the angle: 1e-12 for r / R down to 1e-3.
TEST_CASE("batteries in parallel share as the closed form says, at one end and on the diagonal") {
    for (int batteries = 2; batteries <= 8; ++batteries)
        for (double link : links) {
            auto const one_end = row(batteries, link, "one end");
            auto const diagonal = row(batteries, link, "diagonal");
            for (int k = 1; k <= batteries; ++k) {
                auto const at = static_cast<std::size_t>(k - 1);
                CHECK(std::abs(one_end[at] - share_at_one_end(batteries, link, k)) < 1e-12);
                CHECK(std::abs(diagonal[at] - share_on_the_diagonal(batteries, link, k)) < 1e-12);
            }
        }
}

TEST_CASE("at one end only the sum of a pair's links counts, be they unequal") {
    for (int batteries = 2; batteries <= 8; ++batteries)
        for (double link : links) {
            auto const unequal = standards::shares_of_row({batteries, 1.75 * link, 0.25 * link, "one end"});
            for (int k = 1; k <= batteries; ++k)
                CHECK(std::abs(unequal[static_cast<std::size_t>(k - 1)] - share_at_one_end(batteries, link, k)) <
                      1e-12);
        }
}

// R (i[k+1] - i[k]) = (rp + rn) (i[1] + ... + i[k]) - rn I: the same row again, shifted by what rn I leaves over.
TEST_CASE("on the diagonal unequal links keep each step between neighbors, and one current in all") {
    for (int batteries = 2; batteries <= 8; ++batteries)
        for (double rp : links)
            for (double rn : links) {
                auto const share = standards::shares_of_row({batteries, rp, rn, "diagonal"});
                double sum = 0.0;
                for (std::size_t k = 0; k + 1 < share.size(); ++k) {
                    sum += share[k];
                    CHECK(std::abs(share[k + 1] - share[k] - ((rp + rn) * sum - rn)) < 1e-11);
                }
                CHECK(std::abs(sum + share.back() - 1.0) < 1e-12);
            }
}

TEST_CASE("leads of its own to common posts give each battery the same, or what its leads' resistance allows") {
    for (std::size_t batteries = 2; batteries <= 8; ++batteries)
        for (double link : links) {
            for (double share : standards::shares_of_star(std::vector<double>(batteries, link)))
                CHECK(std::abs(share * static_cast<double>(batteries) - 1.0) < 1e-12);
            std::vector<double> leads, allowed;
            for (std::size_t k = 0; k < batteries; ++k) {
                leads.push_back(link * (1.0 + static_cast<double>(k)));
                allowed.push_back(1.0 / (1.0 + 2.0 * leads.back()));
            }
            double const all = std::accumulate(allowed.begin(), allowed.end(), 0.0);
            auto const share = standards::shares_of_star(leads);
            for (std::size_t k = 0; k < batteries; ++k)
                CHECK(std::abs(share[k] - allowed[k] / all) < 1e-12);
        }
}

TEST_CASE("the diagonal is symmetric, and fair to two batteries whatever their links") {
    for (double link : {0.001, 0.1, 10.0}) {
        CHECK(row(2, link, "diagonal")[0] == doctest::Approx(0.5).epsilon(1e-13));
        auto const shares = row(7, link, "diagonal");
        for (std::size_t k = 0; k < 7; ++k)
            CHECK(shares[k] == doctest::Approx(shares[6 - k]).epsilon(1e-12));
    }
}

TEST_CASE("at one end the nearest battery works hardest, and on the diagonal the outer ones") {
    for (int batteries = 3; batteries <= 8; ++batteries) {
        auto const one_end = row(batteries, 0.05, "one end");
        auto const diagonal = row(batteries, 0.05, "diagonal");
        for (std::size_t k = 1; k < one_end.size(); ++k)
            CHECK(one_end[k] > one_end[k - 1]);
        for (std::size_t k = 1; 2 * k + 1 <= diagonal.size(); ++k)
            CHECK(diagonal[k] < diagonal[k - 1]);
    }
}
