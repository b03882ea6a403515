// protection: does something open before the copper burns? Here what the wiring alone tells: is there a device at all
// between the batteries and each load, and is it in the positive lead?
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/rules/rule.hpp"

#include <array>

namespace bankwright {

inline constexpr std::array protection_rules{
    RuleInfo{
        "protection/missing", Level::error, "0.1.0",
        "a positive conductor fed by a battery with no breaker or fuse between it and the load; jumpers and links "
        "between the bank's own batteries excepted",
        "a fault anywhere along it is fed with all that the bank can give until something burns through",
        "put a breaker or fuse in the positive lead, close to the battery and easy to reach, and lead nothing past it",
        "33 CFR 183.455(a), each ungrounded current-carrying conductor [read]"},
    RuleInfo{
        "protection/negative-side", Level::error, "0.1.0", "the only device sits in the negative conductor",
        "with the negative open the positive is still live, and a fault to anything grounded goes round the device",
        "move the breaker or fuse into the positive lead, close to the battery",
        "33 CFR 183.455(a), each ungrounded conductor [read]; breaker in the positive lead: common practice, no "
        "source"},
};

void check_protection(Seen const& seen, Findings& findings);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/rules/protection_inl.hpp"
#endif
