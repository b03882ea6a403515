// connection: do receptacles, switches, busbars, studs and joints bear what flows through them?
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/rules/rule.hpp"

#include <array>

namespace bankwright {

inline constexpr std::array connection_rules{
    RuleInfo{
        "connection/rating", Level::error, "0.1.0",
        "a current above the rating of a connector, switch or busbar, with every motor at full throttle or all that is "
        "downstream of it at nameplate current",
        "its contacts heat, soften their springs and burn", "use one that is rated for the current",
        "the part's own rating; computed operating point"},
    RuleInfo{"connection/too-thick", Level::warning, "0.1.0",
             "a conductor thicker than the terminals of a receptacle or plug take: its `max_size`, else about 6 AWG",
             "strands are cut away or left outside to make it go in, and the rest heats",
             "end it in a short tail of the largest size that fits, or use a larger connector",
             "the connector's own max_size; about 6 AWG: common practice, no source"},
    RuleInfo{"connection/crowded-stud", Level::warning, "0.1.0", "more than four terminals on one post or stud",
             "the nut catches too few threads and the stack loosens", "use a busbar, or another stud",
             "ABYC, as quoted in the trade: at most four terminals a stud [quoted: trade article]"},
    RuleInfo{"connection/hot-connection", Level::warning, "0.1.0", "a joint or contact that dissipates more than 5 W",
             "so much heat in so small a place loosens and corrodes it, and it gets worse by itself",
             "clean and tighten it, or use a larger terminal", "common practice, no single source"},
};

void check_connections(Seen const& seen, Findings& findings);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/rules/families/connection_inl.hpp"
#endif
