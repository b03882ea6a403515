// Bodies of source_cautions.hpp.
#pragma once

#include "bankwright/reports/source_cautions.hpp"
#include "bankwright/units/print.hpp"

#include <string_view>

#include <fmt/format.h>

namespace bankwright {

namespace internal::source_cautions {

inline std::vector<std::string> chargers_of(Bank const& bank, ChargerKind kind) {
    std::vector<std::string> names;
    for (auto const& charger : bank.chargers)
        if (charger.kind.value_or(ChargerKind::shore) == kind) names.push_back("`" + charger.id + "`");
    return names;
}

inline void say(std::vector<std::string>& said, std::vector<std::string> const& names, std::string_view words) {
    if (!names.empty()) said.push_back(fmt::format("{}: {}", fmt::join(names, ", "), words));
}

inline std::vector<std::string> converters_of(Bank const& bank) {
    std::vector<std::string> names;
    for (auto const& converter : bank.converters)
        names.push_back("`" + converter.id + "`");
    auto const chargers = chargers_of(bank, ChargerKind::converter);
    names.insert(names.end(), chargers.begin(), chargers.end());
    return names;
}

} // namespace internal::source_cautions

BANKWRIGHT_INLINE std::vector<std::string> sources_off(Bank const& bank) {
    using namespace internal::source_cautions;
    std::vector<std::string> said;
    say(said, chargers_of(bank, ChargerKind::shore), "off, and unplugged ashore, before its leads are touched");
    say(said, chargers_of(bank, ChargerKind::alternator),
        "the engine stopped, its key out: an alternator that is parted from its battery while it runs is ruined, and "
        "its voltage with it runs away");
    say(said, chargers_of(bank, ChargerKind::solar),
        "its panels covered, or its own switch open: a panel is live as long as light falls on it");
    say(said, converters_of(bank), "off: it is live from both sides, and its capacitors stay charged for a while");
    for (auto const& relay : bank.relays)
        if (!relay.closed)
            said.push_back(fmt::format("`{}` is not closed by hand: it joins its two sides by itself {}", relay.id,
                                       relay.closes_above ? "while a charger holds " + print(*relay.closes_above)
                                                          : std::string("while a charger works")));
    return said;
}

BANKWRIGHT_INLINE std::vector<std::string> sources_on(Bank const& bank) {
    using namespace internal::source_cautions;
    std::vector<std::string> said;
    say(said, converters_of(bank), "switched on after both of its sides have read right");
    say(said, chargers_of(bank, ChargerKind::shore), "its leads to the batteries first, the plug ashore last");
    say(said, chargers_of(bank, ChargerKind::solar),
        "the controller joined to the battery before the panels are uncovered");
    say(said, chargers_of(bank, ChargerKind::alternator),
        "the battery switch stays closed for as long as the engine runs");
    return said;
}

BANKWRIGHT_INLINE std::vector<std::string> sources_at_work(Bank const& bank) {
    using namespace internal::source_cautions;
    std::vector<std::string> said;
    say(said, chargers_of(bank, ChargerKind::shore), "unplugged ashore before its leads are touched");
    say(said, chargers_of(bank, ChargerKind::alternator),
        "gives while its engine runs, and is never parted from the battery then");
    say(said, chargers_of(bank, ChargerKind::solar),
        "live whenever light falls on its panels; what it gives is reckoned in full sun");
    say(said, converters_of(bank), "live from both sides; what it gives it takes from the other bank");
    return said;
}

} // namespace bankwright
