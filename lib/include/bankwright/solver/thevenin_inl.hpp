// Bodies of thevenin.hpp.
#pragma once

#include "bankwright/solver/thevenin.hpp"

#include <stdexcept>

namespace bankwright::solver {

BANKWRIGHT_INLINE TheveninSource thevenin(Circuit const& circuit, std::vector<NodePair> const& pairs, LoadsDo loads,
                                          SolveOptions const& options) {
    for (NodePair const& pair : pairs)
        for (int node : {pair.plus, pair.minus})
            if (node < 0 || node >= circuit.nodes) throw std::invalid_argument("a pair's node is not in the circuit");
    SmallSignal const small(circuit, pairs, loads, options);
    TheveninSource source;
    source.status = small.operating_point().status;
    if (source.status != Status::solved) return source;
    std::size_t const count = pairs.size();
    source.ohms.assign(count * count, 0.0);
    for (std::size_t p = 0; p < count; ++p) {
        source.feeds.push_back(small.feed(p));
        bool const fed = small.feed(p) == Feed::port;
        source.open_volts.push_back(fed ? small.volts(circuit.loads.size() + p) : 0.0);
        SmallAnswer const drawn = small.draw(p);
        for (std::size_t q = 0; q < count; ++q)
            source.ohms[q * count + p] = fed ? -drawn.pair_volts[q] : 0.0;
    }
    for (std::size_t p = 0; p < count; ++p) // reciprocity, which rounding blurs
        for (std::size_t q = 0; q < p; ++q)
            source.ohms[p * count + q] = source.ohms[q * count + p] = 0.5 * (source.ohm(p, q) + source.ohm(q, p));
    return source;
}

} // namespace bankwright::solver
