#include "bankwright/solver/port_map.hpp"
#include "bankwright/solver/solve.hpp"
#include "support/bank_networks.hpp"
#include "support/random_circuits.hpp"

#include <algorithm>
#include <cmath>

#include <doctest/doctest.h>

using namespace bankwright::solver;

namespace {

// The largest difference of the map from a solve, of volts and amperes each relative to the largest.
double worst_difference(PortMap& map, Circuit const& circuit, std::vector<int> const& sources) {
    std::vector<double> emfs, answer(map.values()), load_amps(circuit.loads.size());
    for (int s : sources)
        emfs.push_back(circuit.branches[static_cast<std::size_t>(s)].emf);
    Solution const expected = solve(circuit);
    Status const status = map.solve(emfs.data(), answer.data(), load_amps.data());
    CHECK(status == expected.status);
    if (status != Status::solved || expected.status != Status::solved) return 0.0;
    double volts = 1e-3, amps = 1e-3, wrong_volts = 0.0, wrong_amps = 0.0;
    for (std::size_t n = 0; n < expected.volts.size(); ++n) {
        volts = std::max(volts, std::abs(expected.volts[n]));
        wrong_volts = std::max(wrong_volts, std::abs(answer[n] - expected.volts[n]));
    }
    for (std::size_t b = 0; b < circuit.branches.size(); ++b) {
        amps = std::max({amps, std::abs(expected.branch_amps[b]),
                         std::abs(circuit.branches[b].emf) / circuit.branches[b].resistance});
        wrong_amps = std::max(wrong_amps, std::abs(answer[expected.volts.size() + b] - expected.branch_amps[b]));
    }
    for (std::size_t l = 0; l < circuit.loads.size(); ++l)
        wrong_amps = std::max(wrong_amps, std::abs(load_amps[l] - expected.load_amps[l]));
    return std::max(wrong_volts / volts, wrong_amps / amps);
}

} // namespace

TEST_CASE("a map answers as a solve does, whatever the changing sources are") {
    random_circuits::Dice dice(1);
    double worst = 0.0;
    for (Law const& law : {Law{ConstantPower{3000.0}}, Law{ConstantCurrent{80.0}}, Law{SquareLaw{0.05, 0.02, 0.9}}}) {
        Circuit circuit = bank_networks::drawn(bank_networks::bank(3, 4), dice);
        circuit.loads[0].law = law;
        std::vector<int> sources;
        for (int b = 0; b < 12; ++b)
            sources.push_back(b);
        PortMap map(circuit, topology(circuit), sources, everything(circuit));
        REQUIRE(map.status() == Status::solved);
        for (int moment = 0; moment < 20; ++moment) {
            for (int s : sources)
                circuit.branches[static_cast<std::size_t>(s)].emf = dice.between(11.0, 13.0);
            worst = std::max(worst, worst_difference(map, circuit, sources));
        }
    }
    CHECK(worst < 1e-12);
}

TEST_CASE("a map answers the same by whatever instructions it is told to use") {
    random_circuits::Dice dice(3);
    Circuit circuit = bank_networks::drawn(bank_networks::bank(3, 4), dice);
    std::vector<int> const sources{0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10}; // an odd number of them
    for (Law const& law : {Law{ConstantPower{3000.0}}, Law{SquareLaw{0.05, 0.02, 0.9}}, Law{ConstantCurrent{80.0}}})
        for (auto const set : {InstructionSet::portable, InstructionSet::avx2, InstructionSet::avx512}) {
            if (!runs_here(set)) continue;
            circuit.loads[0].law = law;
            PortMap map(circuit, topology(circuit), sources, everything(circuit), set);
            REQUIRE(map.status() == Status::solved);
            CHECK(worst_difference(map, circuit, sources) < 1e-12);
        }
}

TEST_CASE("a map tells of as much as is watched, and writes nothing behind it") { // odd ends of registers
    random_circuits::Dice dice(4);
    Circuit circuit = bank_networks::drawn(bank_networks::bank(3, 4), dice);
    circuit.loads[0].law = ConstantPower{3000.0};
    for (auto const set : {InstructionSet::portable, InstructionSet::avx2, InstructionSet::avx512}) {
        if (!runs_here(set)) continue;
        for (int changing = 0; changing <= 12; ++changing)
            for (std::size_t watched = 0; watched <= 20; ++watched) {
                CAPTURE(changing);
                CAPTURE(watched);
                std::vector<int> sources, branches;
                std::vector<double> emfs;
                for (int s = 0; s < changing; ++s) {
                    sources.push_back(s);
                    emfs.push_back(circuit.branches[static_cast<std::size_t>(s)].emf = dice.between(11.0, 13.0));
                }
                for (int b = 0; b < static_cast<int>(watched); ++b)
                    branches.push_back(b);
                PortMap map(circuit, topology(circuit), sources, {{}, branches}, set);
                constexpr double untouched = 7e77;
                std::vector<double> answer(watched + 8, untouched);
                double load_amps = 0.0;
                REQUIRE(map.solve(emfs.data(), answer.data(), &load_amps) == Status::solved);
                Solution const expected = solve(circuit);
                for (std::size_t i = 0; i < watched; ++i)
                    CHECK(answer[i] == doctest::Approx(expected.branch_amps[i]).epsilon(1e-10));
                for (std::size_t i = watched; i < answer.size(); ++i)
                    CHECK(answer[i] == untouched);
                CHECK(load_amps == doctest::Approx(expected.load_amps[0]).epsilon(1e-12));
            }
    }
}

TEST_CASE("a map says so when the sources can no longer give what a load asks for") {
    Circuit circuit = bank_networks::bank(3, 1);
    circuit.loads[0].law = ConstantPower{3000.0};
    PortMap map(circuit, topology(circuit), {0, 1, 2}, everything(circuit));
    std::vector<double> answer(map.values()), load_amps(1);
    double const full[] = {12.6, 12.6, 12.6}, low[] = {4.0, 4.0, 4.0};
    CHECK(map.solve(full, answer.data(), load_amps.data()) == Status::solved);
    CHECK(map.solve(low, answer.data(), load_amps.data()) == Status::no_operating_point);
}

TEST_CASE("a map of any circuit with any loads answers as a solve does") {
    random_circuits::Dice dice(2);
    int maps = 0;
    for (int i = 0; i < 200; ++i) {
        Circuit circuit = random_circuits::circuit(dice, {.low_ohms = 1e-3, .high_ohms = 1e1});
        random_circuits::add_loads(dice, circuit);
        std::vector<int> sources;
        for (int b = 0; b < static_cast<int>(circuit.branches.size()); ++b)
            if (circuit.branches[static_cast<std::size_t>(b)].emf != 0.0 && dice.chance(0.7)) sources.push_back(b);
        PortMap map(circuit, topology(circuit), sources, everything(circuit));
        if (map.status() != Status::solved) continue;
        ++maps;
        CAPTURE(i);
        for (int s : sources)
            circuit.branches[static_cast<std::size_t>(s)].emf *= dice.between(0.9, 1.1);
        CHECK(worst_difference(map, circuit, sources) < 1e-9); // near a fold the loads magnify what rounding does
    }
    CHECK(maps > 150);
}

TEST_CASE("and so it does of sources that go on as they went, with a kink and a jump") {
    random_circuits::Dice dice(2);
    Circuit circuit = bank_networks::drawn(bank_networks::bank(3, 4), dice);
    circuit.loads[0].law = ConstantPower{3000.0};
    std::vector<int> sources;
    std::vector<double> slopes;
    for (int b = 0; b < 12; ++b) {
        sources.push_back(b);
        slopes.push_back(dice.between(-2e-3, -1e-3));
    }
    PortMap map(circuit, topology(circuit), sources, everything(circuit));
    double worst = 0.0;
    for (int moment = 0; moment < 60; ++moment) {
        for (int s : sources) {
            auto const at = static_cast<std::size_t>(s);
            if (moment == 20) slopes[at] *= 3.0;
            circuit.branches[at].emf += moment == 40 ? 0.3 : slopes[at];
        }
        worst = std::max(worst, worst_difference(map, circuit, sources));
    }
    CHECK(worst < 1e-12);
}
