// Bodies of protection_rating.hpp.
#pragma once

#include "bankwright/devices/protection_rating.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/tables/protection.hpp"

#include <algorithm>

namespace bankwright {

namespace internal::rating_rules {
inline constexpr double print = 1.0 + 1e-9; // a rating that equals a limit is within it
inline Source with_confidence(Source source, std::string_view mark) {
    source.confidence = mark;
    return source;
}
} // namespace internal::rating_rules

BANKWRIGHT_INLINE std::optional<Current> next_standard_size(Current current) {
    for (auto const& size : tables::protection::standard_sizes)
        if (size.amperes * internal::rating_rules::print >= current.value()) return size.amperes * si::ampere;
    return std::nullopt;
}

BANKWRIGHT_INLINE RatingLimit abyc_rating_limit(Current ampacity) {
    auto const& rule = tables::protection::rating_share[1];
    auto const next = next_standard_size(ampacity);
    auto const within = next && next->value() <= rule.share * ampacity.value() * internal::rating_rules::print;
    return {within ? std::max(*next, ampacity) : ampacity,
            {"ABYC E-11", "E-11.10, rating of overcurrent protection", "as summarized", "quoted: trade page"}};
}

BANKWRIGHT_INLINE RatingLimit cfr_rating_limit(Current ampacity, Voltage system) {
    auto const& rule = tables::protection::rating_share[0];
    auto const source = internal::rating_rules::with_confidence(tables::protection::rating_share_source, rule.mark);
    if (system.value() < 50.0) return {rule.share * ampacity, source};
    return {abyc_rating_limit(ampacity).rating, source};
}

BANKWRIGHT_INLINE InterruptingNeed interrupting_need(Current total_cranking, Voltage system, BreakerPlace place) {
    auto const& rows = tables::protection::interrupting;
    auto const highest = rows.back().system_up_to;
    auto const volts = std::min(system.value(), static_cast<double>(highest));
    for (auto const& row : rows) {
        if (volts > row.system_up_to || total_cranking.value() > row.cranking_up_to) continue;
        auto const beyond = system.value() > highest;
        return {
            (place == BreakerPlace::main ? row.main_breaker : row.branch_breaker) * si::ampere,
            internal::rating_rules::with_confidence(tables::protection::interrupting_source,
                                                    beyond ? "recalled, for 32 V: the table ends there" : row.mark)};
    }
    // The last row has no upper bound: only a current that is not a number comes here.
    return {rows.back().main_breaker * si::ampere, tables::protection::interrupting_source};
}

BANKWRIGHT_INLINE std::optional<InterruptingNeed> large_bank_need(Current total_cranking, Charge capacity,
                                                                  std::optional<Current> makers) {
    auto const& row = tables::protection::large_bank[0];
    constexpr double ampere_hour = 3600.0; // [C]
    auto const above = [](double value, double limit) { return value > limit * internal::rating_rules::print; };
    if (!above(total_cranking.value(), row.cranking) && !above(capacity.value(), row.ampere_hours * ampere_hour))
        return std::nullopt;
    Current const twenty = row.interrupts * si::ampere;
    if (!makers) return InterruptingNeed{twenty, tables::protection::large_bank_source};
    auto const need = above(makers->value(), row.makers_up_to) ? std::max(*makers, twenty) : *makers;
    return InterruptingNeed{need, tables::protection::large_bank_source};
}

BANKWRIGHT_INLINE Charge parallel_bank_limit() {
    return tables::protection::parallel_bank[0].ampere_hours * 3600.0 * si::coulomb;
}

BANKWRIGHT_INLINE Source parallel_bank_source() { return tables::protection::parallel_bank_source; }

BANKWRIGHT_INLINE DistanceLimit distance_limit(Routing routing) {
    auto const& row = tables::protection::distances[static_cast<std::size_t>(routing)];
    return {row.inches * 0.0254 * si::meter,
            internal::rating_rules::with_confidence(tables::protection::distances_source, row.mark)};
}

} // namespace bankwright
