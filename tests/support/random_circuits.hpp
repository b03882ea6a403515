// Random circuits for laws and cross checks: the same on every machine, since only the engine's raw bits are used.
#pragma once

#include "bankwright/solver/circuit.hpp"

#include <cmath>
#include <cstdint>
#include <random>

namespace random_circuits {

class Dice {
public:
    explicit Dice(std::uint64_t seed) : engine_(seed) {}
    double unit() { return static_cast<double>(engine_() >> 11) * 0x1p-53; } // [0, 1)
    double between(double low, double high) { return low + (high - low) * unit(); }
    double log_between(double low, double high) { return low * std::pow(high / low, unit()); }
    int below(int n) { return static_cast<int>(unit() * n); }
    bool chance(double p) { return unit() < p; }

private:
    std::mt19937_64 engine_;
};

struct Recipe {
    int max_nodes = 12;
    double low_ohms = 1e-4;
    double high_ohms = 1e1;
    double max_emf = 15.0;
    double join_share = 0.15; // of the lines
    int max_loads = 3;        // constant currents
    double amperes = 100.0;
    bool connected = false; // else some circuits fall into islands
};

// A random tree with extra lines, a part of them joins; loop branches and parallel joins now and then.
inline bankwright::solver::Circuit circuit(Dice& dice, Recipe const& recipe = {}) {
    using namespace bankwright::solver;
    Circuit c;
    c.nodes = 2 + dice.below(recipe.max_nodes - 1);
    c.reference = dice.below(c.nodes);
    auto const add = [&](int a, int b) {
        if (dice.chance(0.5)) std::swap(a, b);
        if (dice.chance(recipe.join_share))
            c.joins.push_back({a, b});
        else
            c.branches.push_back({a, b, dice.log_between(recipe.low_ohms, recipe.high_ohms),
                                  dice.chance(0.5) ? dice.between(-recipe.max_emf, recipe.max_emf) : 0.0});
    };
    for (int n = 1; n < c.nodes; ++n)
        if (recipe.connected || !dice.chance(0.05)) add(n, dice.below(n));
    int const extra = dice.below(2 * c.nodes);
    for (int i = 0; i < extra; ++i) {
        int const a = dice.below(c.nodes), b = dice.below(c.nodes);
        if (a != b || dice.chance(0.2)) add(a, b);
    }
    int const loads = recipe.max_loads > 0 ? dice.below(recipe.max_loads + 1) : 0;
    for (int i = 0; i < loads; ++i)
        c.loads.push_back(
            {dice.below(c.nodes), dice.below(c.nodes), ConstantCurrent{dice.between(-recipe.amperes, recipe.amperes)}});
    return c;
}

// One to `most` loads of every law, in any direction, at any nodes: some unfed, some shorted, some beyond reach.
inline void add_loads(Dice& dice, bankwright::solver::Circuit& c, int most = 4) {
    using namespace bankwright::solver;
    for (int left = 1 + dice.below(most); left > 0; --left) {
        Load load{dice.below(c.nodes), dice.below(c.nodes), {}};
        switch (dice.below(4)) {
        case 0:
            load.law = ConstantCurrent{dice.between(-20.0, 20.0)};
            break;
        case 1:
            load.law = ConstantPower{dice.log_between(0.1, 1000.0)};
            break;
        case 2:
            load.law = SquareLaw{dice.log_between(1e-3, 1.0), dice.chance(0.3) ? 0.0 : dice.log_between(1e-3, 1.0),
                                 dice.unit()};
            break;
        default:
            load.law = LimitedSource{dice.between(-2.0, 16.0), dice.log_between(0.1, 100.0)};
        }
        c.loads.push_back(load);
    }
}

} // namespace random_circuits
