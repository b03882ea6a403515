// Sensitivities against differences: every parameter a little up and down, everything solved anew in quadruple
// precision.
#include "bankwright/solver/sensitivities.hpp"
#include "reference/small_changes.hpp"
#include "support/random_circuits.hpp"

#include <algorithm>
#include <cmath>

#include <doctest/doctest.h>

using namespace bankwright::solver;
using random_circuits::Dice;

namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

// Every number of a circuit, in the order of Sensitivities.
std::vector<double*> numbers_of(Circuit& c) {
    std::vector<double*> all;
    for (Branch& b : c.branches)
        all.push_back(&b.resistance);
    for (Branch& b : c.branches)
        all.push_back(&b.emf);
    for (Load& load : c.loads) {
        if (auto* constant = std::get_if<ConstantCurrent>(&load.law)) all.push_back(&constant->amperes);
        if (auto* power = std::get_if<ConstantPower>(&load.law)) all.push_back(&power->watts);
        if (auto* machine = std::get_if<SquareLaw>(&load.law))
            all.insert(all.end(), {&machine->coefficient, &machine->resistance, &machine->duty});
        if (auto* source = std::get_if<LimitedSource>(&load.law))
            all.insert(all.end(), {&source->volts, &source->amperes});
    }
    return all;
}

std::vector<double> flat(GaugeSensitivities const& of) {
    std::vector<double> all = of.to_resistance;
    all.insert(all.end(), of.to_emf.begin(), of.to_emf.end());
    for (auto const& numbers : of.to_load)
        all.insert(all.end(), numbers.begin(), numbers.end());
    return all;
}

slow::Quad read(slow::Answer const& answer, Gauge const& gauge) {
    if (gauge.kind == Gauge::branch_amps) return answer.branch_amps[at(gauge.number)];
    if (gauge.kind == Gauge::node_volts) return answer.volts[at(gauge.number)];
    return answer.volts[at(gauge.number)] - answer.volts[at(gauge.other)];
}

// Largest difference of any derivative times its parameter, relative to the largest of its gauge. Negative if the
// circuit has no answer, or one beside a kink.
double worst_of(Circuit circuit, std::vector<Gauge> const& gauges) {
    Solution const s = solve(circuit);
    if (s.status != Status::solved) return -1.0;
    std::vector<double> volts_near;
    for (Load const& l : circuit.loads) {
        volts_near.push_back(s.volts[at(l.plus)] - s.volts[at(l.minus)]);
        if (std::abs(volts_near.back()) < 1e-3) return -1.0;
    }
    Sensitivities const found = sensitivities(circuit, gauges);
    REQUIRE(found.status == Status::solved);
    REQUIRE(found.gauges.size() == gauges.size());
    std::vector<std::vector<slow::Quad>> differences(gauges.size());
    std::vector<double> sizes;
    for (double* number : numbers_of(circuit)) {
        double const before = *number, size = before == 0.0 ? 1.0 : before, step = 0x1p-24 * size;
        sizes.push_back(size);
        *number = before + step;
        slow::Answer const up = slow::with_loads(circuit, volts_near, s.load_amps);
        double const high = *number;
        *number = before - step;
        slow::Answer const down = slow::with_loads(circuit, volts_near, s.load_amps);
        for (std::size_t g = 0; g < gauges.size(); ++g)
            differences[g].push_back((read(up, gauges[g]) - read(down, gauges[g])) /
                                     (slow::Quad(high) - slow::Quad(*number)));
        *number = before;
    }
    double worst = 0.0;
    for (std::size_t g = 0; g < gauges.size(); ++g) {
        auto const ours = flat(found.gauges[g]);
        REQUIRE(ours.size() == sizes.size());
        double largest = 1e-6, off = 0.0; // a reading that nothing moves has noise of its own
        for (std::size_t p = 0; p < ours.size(); ++p) {
            double const theirs = static_cast<double>(differences[g][p]);
            largest = std::max(largest, std::abs(theirs * sizes[p]));
            off = std::max(off, std::abs((ours[p] - theirs) * sizes[p]));
        }
        worst = std::max(worst, off / largest);
    }
    return worst;
}

std::vector<Gauge> some_gauges(Dice& dice, Circuit const& c) {
    int const a = dice.below(c.nodes), b = dice.below(c.nodes);
    std::vector<Gauge> gauges{{Gauge::node_volts, dice.below(c.nodes)}, {Gauge::span_volts, a, b}};
    if (!c.branches.empty()) gauges.push_back({Gauge::branch_amps, dice.below(static_cast<int>(c.branches.size()))});
    return gauges;
}

} // namespace

// Reached: 5e-13 and 8e-14, relative to the most that any number does to the reading. A step of 2^-24 either way leaves
// a central difference an error of some 1e-14 of its own.
TEST_CASE("in a linear circuit each reading's change with every number is that of quadruple precision") {
    Dice dice(71);
    double worst = 0.0;
    for (int i = 0; i < 300; ++i) {
        Circuit const c = random_circuits::circuit(dice, {.max_nodes = 7, .connected = true});
        worst = std::max(worst, worst_of(c, some_gauges(dice, c)));
    }
    MESSAGE("worst ", worst);
    CHECK(worst < 1e-12);
}

TEST_CASE("loads of every law are followed along their tangents") {
    Dice dice(72);
    double worst = 0.0;
    int solved = 0;
    for (int i = 0; i < 600; ++i) {
        Circuit c =
            random_circuits::circuit(dice, {.max_nodes = 6, .high_ohms = 1.0, .max_loads = 0, .connected = true});
        random_circuits::add_loads(dice, c, 3);
        double const off = worst_of(c, some_gauges(dice, c));
        if (off < 0.0) continue;
        ++solved;
        worst = std::max(worst, off);
    }
    MESSAGE("worst ", worst, " of ", solved);
    CHECK(solved > 100);
    CHECK(worst < 1e-12);
}
