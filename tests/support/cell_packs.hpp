// Invented packs of very many cells: rows of cells in series, bus-bars from cell to cell along each row.
#pragma once

#include "bankwright/solver/circuit.hpp"
#include "support/random_circuits.hpp"

namespace cell_packs {

using namespace bankwright::solver;

// Node of the bus-bar below row `series` at cell `parallel`; row 0 is the negative end.
inline int node(int series, int parallel, int width) { return series * width + parallel; }

// Every cell 3.7 V behind 20 mohm, every piece of bus-bar 50 uohm, `amperes` drawn from each column's top to its
// bottom. The branches are first the cells, row by row.
inline Circuit alike(int series, int parallel, double amperes) {
    Circuit c;
    c.nodes = (series + 1) * parallel;
    for (int s = 0; s < series; ++s)
        for (int p = 0; p < parallel; ++p)
            c.branches.push_back({node(s, p, parallel), node(s + 1, p, parallel), 0.020, 3.7});
    for (int s = 0; s <= series; ++s)
        for (int p = 0; p + 1 < parallel; ++p)
            c.branches.push_back({node(s, p, parallel), node(s, p + 1, parallel), 50e-6, 0.0});
    for (int p = 0; p < parallel; ++p)
        c.loads.push_back({node(series, p, parallel), node(0, p, parallel), ConstantCurrent{amperes}});
    return c;
}

// Cells of 15 to 30 mohm and 3.6 to 3.7 V, bus-bars of 20 to 100 uohm, one load from corner to corner.
inline Circuit drawn(int series, int parallel, random_circuits::Dice& dice) {
    Circuit c = alike(series, parallel, 0.0);
    for (Branch& b : c.branches)
        b.resistance = b.emf != 0.0 ? dice.between(15e-3, 30e-3) : dice.between(20e-6, 100e-6);
    for (Branch& b : c.branches)
        if (b.emf != 0.0) b.emf = dice.between(3.6, 3.7);
    c.loads = {{node(series, parallel - 1, parallel), node(0, 0, parallel), ConstantCurrent{2.0 * parallel}}};
    return c;
}

} // namespace cell_packs
