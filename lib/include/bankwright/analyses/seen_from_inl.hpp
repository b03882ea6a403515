// Bodies of seen_from.hpp.
#pragma once

#include "bankwright/analyses/seen_from.hpp"
#include "bankwright/network/build.hpp"
#include "bankwright/solver/thevenin.hpp"

namespace bankwright {

// Two names of one point have no voltage and no resistance between them, but count as a source.
BANKWRIGHT_INLINE SeenFromResult seen_from(Bank const& bank, std::string const& plus, std::string const& minus,
                                           SeenFromOptions const& options) {
    auto const network = build(bank, options.moment);
    auto const source =
        solver::thevenin(network.circuit, {{node_of(network, plus), node_of(network, minus)}}, options.loads);
    SeenFromResult result{source.status, {}};
    if (source.status != solver::Status::solved || source.feeds[0] == solver::Feed::none) return result;
    result.source = SeenFrom{source.open_volts[0] * si::volt, source.ohms[0] * si::ohm, {}};
    if (source.feeds[0] == solver::Feed::port)
        result.source->short_current = result.source->open / result.source->resistance;
    return result;
}

} // namespace bankwright
