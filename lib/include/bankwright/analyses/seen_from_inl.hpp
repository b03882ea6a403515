// Bodies of seen_from.hpp.
#pragma once

#include "bankwright/analyses/seen_from.hpp"
#include "bankwright/network/build.hpp"
#include "bankwright/solver/thevenin.hpp"

#include <vector>

namespace bankwright {

namespace internal {

inline solver::TheveninSource source_behind(Bank const& bank, std::vector<TerminalSpan> const& spans,
                                            SeenFromOptions const& options) {
    auto const network = build(bank, options.moment);
    std::vector<solver::NodePair> pairs;
    for (auto const& span : spans)
        pairs.push_back({node_of(network, span.plus), node_of(network, span.minus)});
    return solver::thevenin(network.circuit, pairs, options.loads);
}

} // namespace internal

// Two names of one point have no voltage and no resistance between them: a source of nothing, but a source.
BANKWRIGHT_INLINE SeenFromResult seen_from(Bank const& bank, std::string const& plus, std::string const& minus,
                                           SeenFromOptions const& options) {
    auto const source = internal::source_behind(bank, {{plus, minus}}, options);
    SeenFromResult result{source.status, {}};
    if (source.status != solver::Status::solved || source.feeds[0] == solver::Feed::none) return result;
    result.source = SeenFrom{source.open_volts[0] * si::volt, source.ohms[0] * si::ohm, {}};
    if (source.feeds[0] == solver::Feed::port)
        result.source->short_current = result.source->open / result.source->resistance;
    return result;
}

BANKWRIGHT_INLINE SeenFromTwoResult seen_from_two(Bank const& bank, TerminalSpan const& first,
                                                  TerminalSpan const& second, SeenFromOptions const& options) {
    auto const source = internal::source_behind(bank, {first, second}, options);
    SeenFromTwoResult result{source.status, {}};
    if (source.status != solver::Status::solved || source.feeds[0] == solver::Feed::none ||
        source.feeds[1] == solver::Feed::none)
        return result;
    result.source = SeenFromTwo{source.open_volts[0] * si::volt, source.open_volts[1] * si::volt,
                                source.ohm(0, 0) * si::ohm, source.ohm(1, 1) * si::ohm, source.ohm(0, 1) * si::ohm};
    return result;
}

} // namespace bankwright
