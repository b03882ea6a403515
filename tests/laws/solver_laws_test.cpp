// Physics that holds for every circuit the solver answers, with sums formed here and not by the solver.
#include "bankwright/solver/load_laws.hpp"
#include "bankwright/solver/solve.hpp"
#include "support/random_circuits.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <vector>

#include <doctest/doctest.h>

using namespace bankwright::solver;
using random_circuits::Dice;

namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

// What errors are measured against.
struct Size {
    double volts = 1e-6;
    double amps = 1e-6;
};

Size size_of(Circuit const& c, Solution const& s) {
    Size size;
    for (Branch const& b : c.branches)
        size.volts = std::max(size.volts, std::abs(b.emf));
    for (double v : s.volts)
        size.volts = std::max(size.volts, std::abs(v));
    for (auto const* list : {&s.branch_amps, &s.join_amps, &s.load_amps})
        for (double a : *list)
            size.amps = std::max(size.amps, std::abs(a));
    return size;
}

double worst_node_sum(Circuit const& c, Solution const& s) {
    std::vector<double> sum(at(c.nodes), 0.0);
    auto const flow = [&](int from, int to, double amps) {
        sum[at(from)] -= amps;
        sum[at(to)] += amps;
    };
    for (std::size_t i = 0; i < c.branches.size(); ++i)
        flow(c.branches[i].from, c.branches[i].to, s.branch_amps[i]);
    for (std::size_t i = 0; i < c.joins.size(); ++i)
        flow(c.joins[i].from, c.joins[i].to, s.join_amps[i]);
    for (std::size_t i = 0; i < c.loads.size(); ++i)
        flow(c.loads[i].plus, c.loads[i].minus, s.load_amps[i]);
    double worst = 0.0;
    for (double x : sum)
        worst = std::max(worst, std::abs(x));
    return worst;
}

double across(Solution const& s, Load const& load) { return s.volts[at(load.plus)] - s.volts[at(load.minus)]; }

bool fed(Solution const& s, Load const& load) { return s.island[at(load.plus)] == s.island[at(load.minus)]; }

// How far a load is from its law, as a share of the circuit's voltages or currents.
double off_its_law(Solution const& s, Load const& load, double amps, Size const& size) {
    double const volts = across(s, load);
    if (auto const* power = std::get_if<ConstantPower>(&load.law))
        return amps == 0.0 ? std::max(0.0, volts) / size.volts : std::abs(volts * amps / power->watts - 1.0);
    if (auto const* square = std::get_if<SquareLaw>(&load.law))
        return std::abs(amps - current(*square, volts)) / size.amps;
    if (auto const* source = std::get_if<LimitedSource>(&load.law)) {
        if (amps > 0.0 || amps < -source->amperes) return 1.0;
        double const over = (volts - source->volts) / size.volts;
        return amps == 0.0 ? std::max(0.0, -over) : amps == -source->amperes ? std::max(0.0, over) : std::abs(over);
    }
    return 0.0;
}

template <class Check>
void for_random_circuits(int count, std::uint64_t seed, Check const& check) {
    Dice dice(seed);
    for (int i = 0; i < count; ++i) {
        Circuit const c = random_circuits::circuit(dice);
        Solution const s = solve(c);
        REQUIRE(s.status == Status::solved);
        check(dice, c, s);
    }
}

std::vector<int> shuffled(Dice& dice, int count) {
    std::vector<int> order(at(count));
    std::iota(order.begin(), order.end(), 0);
    for (int i = count - 1; i > 0; --i)
        std::swap(order[at(i)], order[at(dice.below(i + 1))]);
    return order;
}

constexpr double epsilon = std::numeric_limits<double>::epsilon();
constexpr double rounding = 1e-13; // five decades of resistance, a dozen nodes: ten times what is seen

} // namespace

TEST_CASE("currents sum to nothing at every node, and power given is power taken") {
    for_random_circuits(2000, 21, [](Dice&, Circuit const& c, Solution const& s) {
        Size const size = size_of(c, s);
        CHECK(worst_node_sum(c, s) < rounding * size.amps);
        CHECK(s.residual < rounding * size.amps);
        CHECK(std::abs(s.power_imbalance) <=
              rounding * size.amps * size.volts * static_cast<double>(c.branches.size()));
    });
}

// Currents are summed at the nodes, so each carries a few roundings of the largest, and its resistance makes them
// volts.
TEST_CASE("every branch obeys Ohm's law and joined nodes are at one voltage") {
    for_random_circuits(2000, 22, [](Dice&, Circuit const& c, Solution const& s) {
        Size const size = size_of(c, s);
        for (std::size_t i = 0; i < c.branches.size(); ++i) {
            Branch const& b = c.branches[i];
            double const off = s.volts[at(b.from)] - s.volts[at(b.to)] + b.emf - b.resistance * s.branch_amps[i];
            CHECK(std::abs(off) < rounding * size.volts + 4.0 * epsilon * size.amps * b.resistance);
        }
        for (Join const& j : c.joins)
            CHECK(s.volts[at(j.from)] == s.volts[at(j.to)]);
    });
}

TEST_CASE("other numbers for the nodes and another order of the branches change nothing") {
    for_random_circuits(1000, 23, [](Dice& dice, Circuit const& c, Solution const& s) {
        std::vector<int> const name = shuffled(dice, c.nodes);
        std::vector<int> const order = shuffled(dice, static_cast<int>(c.branches.size()));
        Circuit other = c;
        other.reference = name[at(c.reference)];
        for (std::size_t i = 0; i < order.size(); ++i) {
            Branch const& b = c.branches[at(order[i])];
            other.branches[i] = {name[at(b.from)], name[at(b.to)], b.resistance, b.emf};
        }
        for (Join& j : other.joins)
            j = {name[at(j.from)], name[at(j.to)]};
        for (Load& l : other.loads)
            l.plus = name[at(l.plus)], l.minus = name[at(l.minus)];
        Solution const t = solve(other);
        REQUIRE(t.status == Status::solved);
        Size const size = size_of(c, s);
        for (std::size_t i = 0; i < order.size(); ++i)
            CHECK(std::abs(t.branch_amps[i] - s.branch_amps[at(order[i])]) < rounding * size.amps);
        for (std::size_t i = 0; i < c.joins.size(); ++i)
            CHECK(std::abs(t.join_amps[i] - s.join_amps[i]) < rounding * size.amps);
        for (int n = 0; n < c.nodes; ++n) // a floating island may count from another node: compare differences
            for (int m = 0; m < n; ++m)
                if (s.island[at(n)] == s.island[at(m)])
                    CHECK(std::abs((t.volts[at(name[at(n)])] - t.volts[at(name[at(m)])]) -
                                   (s.volts[at(n)] - s.volts[at(m)])) < rounding * size.volts);
    });
}

TEST_CASE("sources times k give answers times k, resistances times k give currents through k") {
    for_random_circuits(1000, 24, [](Dice& dice, Circuit const& c, Solution const& s) {
        double const k = dice.log_between(1e-3, 1e3);
        Circuit stronger = c, stiffer = c;
        for (Branch& b : stronger.branches)
            b.emf *= k;
        for (Branch& b : stiffer.branches)
            b.resistance *= k;
        for (Load& l : stronger.loads)
            std::get<ConstantCurrent>(l.law).amperes *= k;
        for (Load& l : stiffer.loads)
            std::get<ConstantCurrent>(l.law).amperes /= k;
        Solution const t = solve(stronger), u = solve(stiffer);
        Size const size = size_of(c, s);
        for (std::size_t n = 0; n < s.volts.size(); ++n) {
            CHECK(std::abs(t.volts[n] / k - s.volts[n]) < rounding * size.volts);
            CHECK(std::abs(u.volts[n] - s.volts[n]) < rounding * size.volts);
        }
        for (std::size_t b = 0; b < s.branch_amps.size(); ++b) {
            CHECK(std::abs(t.branch_amps[b] / k - s.branch_amps[b]) < rounding * size.amps);
            CHECK(std::abs(u.branch_amps[b] * k - s.branch_amps[b]) < rounding * size.amps);
        }
    });
}

TEST_CASE("a current at one port makes at another the voltage that it would make here from there") {
    Dice dice(25);
    for (int i = 0; i < 1000; ++i) {
        Circuit c = random_circuits::circuit(dice, {.connected = true});
        for (Branch& b : c.branches)
            b.emf = 0.0;
        Load const here{dice.below(c.nodes), dice.below(c.nodes), ConstantCurrent{1.0}};
        Load const there{dice.below(c.nodes), dice.below(c.nodes), ConstantCurrent{1.0}};
        c.loads = {here};
        Solution const s = solve(c);
        c.loads = {there};
        Solution const t = solve(c);
        double const size = std::max({1e-6, std::abs(across(s, here)), std::abs(across(t, there))});
        CHECK(std::abs(across(s, there) - across(t, here)) < rounding * size);
    }
}

TEST_CASE("sources one at a time add up to all at once") {
    for_random_circuits(500, 26, [](Dice&, Circuit const& c, Solution const& s) {
        Circuit still = c;
        for (Branch& b : still.branches)
            b.emf = 0.0;
        for (Load& l : still.loads)
            l.law = ConstantCurrent{0.0};
        std::vector<double> volts(s.volts.size(), 0.0), amps(s.branch_amps.size(), 0.0);
        Size size = size_of(c, s);
        auto const add = [&](Circuit const& one) {
            Solution const t = solve(one);
            Size const part = size_of(one, t);
            size = {std::max(size.volts, part.volts), std::max(size.amps, part.amps)};
            for (std::size_t n = 0; n < volts.size(); ++n)
                volts[n] += t.volts[n];
            for (std::size_t b = 0; b < amps.size(); ++b)
                amps[b] += t.branch_amps[b];
        };
        for (std::size_t b = 0; b < c.branches.size(); ++b) {
            Circuit one = still;
            one.branches[b].emf = c.branches[b].emf;
            add(one);
        }
        for (std::size_t l = 0; l < c.loads.size(); ++l) {
            Circuit one = still;
            one.loads[l].law = c.loads[l].law;
            add(one);
        }
        for (std::size_t n = 0; n < volts.size(); ++n)
            CHECK(std::abs(volts[n] - s.volts[n]) < rounding * size.volts);
        for (std::size_t b = 0; b < amps.size(); ++b)
            CHECK(std::abs(amps[b] - s.branch_amps[b]) < rounding * size.amps);
    });
}

TEST_CASE("a branch split into two of twice its resistance changes nothing else") {
    for_random_circuits(500, 27, [](Dice& dice, Circuit const& c, Solution const& s) {
        if (c.branches.empty()) return;
        std::size_t const b = at(dice.below(static_cast<int>(c.branches.size())));
        Circuit split = c;
        split.branches[b].resistance *= 2.0;
        split.branches.push_back(split.branches[b]);
        Solution const t = solve(split);
        Size const size = size_of(c, s);
        CHECK(std::abs(2.0 * t.branch_amps[b] - s.branch_amps[b]) < rounding * size.amps);
        CHECK(std::abs(t.branch_amps.back() - t.branch_amps[b]) < rounding * size.amps);
        for (std::size_t n = 0; n < s.volts.size(); ++n)
            CHECK(std::abs(t.volts[n] - s.volts[n]) < rounding * size.volts);
    });
}

// Currents of loads are found to about 1e-13 of their own and pass on to the rest; 1e-9 leaves room near a fold, where
// the square root of rounding is what there is to have.
TEST_CASE("ten thousand circuits with loads of every law end in an answer that obeys every law, or in none") {
    Dice dice(31);
    int solved = 0;
    double worst = 0.0;
    for (int i = 0; i < 10000; ++i) {
        Circuit c = random_circuits::circuit(dice, {.max_loads = 0});
        random_circuits::add_loads(dice, c);
        Solution const s = solve(c);
        if (s.status == Status::no_operating_point) {
            CHECK(s.reachable_share >= 0.0);
            CHECK(s.reachable_share < 1.0);
            continue;
        }
        REQUIRE(s.status == Status::solved);
        ++solved;
        Size const size = size_of(c, s);
        worst = std::max({worst, worst_node_sum(c, s) / size.amps, s.residual / size.amps,
                          std::abs(s.power_imbalance) / (size.amps * size.volts)});
        for (std::size_t l = 0; l < c.loads.size(); ++l) {
            if (!fed(s, c.loads[l]))
                CHECK(s.load_amps[l] == 0.0);
            else if (c.loads[l].plus != c.loads[l].minus)
                worst = std::max(worst, off_its_law(s, c.loads[l], s.load_amps[l], size));
        }
    }
    CHECK(worst < 1e-9);
    CHECK(solved > 8000);
    CHECK(solved < 9900);
}

// A power of two changes no digit, so nothing but a threshold in volts or amperes could tell the two apart.
TEST_CASE("a millionth of every voltage and current is the same circuit, whatever the laws of its loads") {
    Dice dice(33);
    constexpr double k = 0x1p-20;
    for (int i = 0; i < 2000; ++i) {
        CAPTURE(i);
        Circuit c = random_circuits::circuit(dice, {.max_loads = 0});
        random_circuits::add_loads(dice, c);
        Circuit small = c;
        for (Branch& b : small.branches)
            b.emf *= k;
        for (Load& l : small.loads) {
            if (auto* current = std::get_if<ConstantCurrent>(&l.law)) current->amperes *= k;
            if (auto* power = std::get_if<ConstantPower>(&l.law)) power->watts *= k * k;
            if (auto* square = std::get_if<SquareLaw>(&l.law)) square->coefficient /= k;
            if (auto* source = std::get_if<LimitedSource>(&l.law)) source->volts *= k, source->amperes *= k;
        }
        Solution const s = solve(c), t = solve(small);
        REQUIRE(t.status == s.status);
        for (std::size_t n = 0; n < s.volts.size(); ++n)
            CHECK(t.volts[n] / k == s.volts[n]);
        for (std::size_t l = 0; l < s.load_amps.size(); ++l)
            CHECK(t.load_amps[l] / k == s.load_amps[l]);
    }
}

TEST_CASE("at the share that can be reached there is an operating point, a little above it there is none") {
    Dice dice(32);
    int met = 0;
    while (met < 150) {
        Circuit c = random_circuits::circuit(dice, {.max_loads = 0});
        random_circuits::add_loads(dice, c);
        Solution const none = solve(c);
        if (none.status != Status::no_operating_point || none.reachable_share < 1e-6) continue;
        ++met;
        auto const with = [&](double share) {
            Circuit part = c;
            for (Load& l : part.loads)
                if (auto* power = std::get_if<ConstantPower>(&l.law)) power->watts *= share;
            return solve(part).status;
        };
        CHECK(with(none.reachable_share * (1.0 - 1e-6)) == Status::solved);
        CHECK(with(none.reachable_share * (1.0 + 1e-6)) == Status::no_operating_point);
    }
}
