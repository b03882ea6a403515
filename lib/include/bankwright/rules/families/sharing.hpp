// sharing: does every battery do its part, and none another's?
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/rules/rule.hpp"

#include <array>

namespace bankwright {

inline constexpr std::array sharing_rules{
    RuleInfo{"sharing/reverse-charge", Level::error, "0.1.0",
             "a battery that is charged, at more than a hundredth of its capacity an hour, while the bank discharges",
             "the others spend their charge on it instead of on the load; it is far emptier, or of a lower voltage",
             "fully charge every battery on its own, measure each at rest, and replace the odd one",
             "computed operating point; sign of the current: Lessons in Electric Circuits, vol. I, ch. 10 [read]; "
             "C/100: common practice, no single source"},
    RuleInfo{"sharing/over-current", Level::error, "0.1.0",
             "a battery that carries more than its own max_discharge or max_charge",
             "a lithium battery's protective disconnect opens and drops the load on the others; any battery overheats",
             "add strings, even out the links, or draw less",
             "the battery's own max_discharge and max_charge; computed "
             "operating point"},
    RuleInfo{
        "sharing/uneven", Level::warning, "0.1.0",
        "a parallel string that carries more than 110 % of its even share in the operating point",
        "it is emptied first and ages first, and the bank then has less than its label says",
        "land the main leads diagonally, the positive on one end of the bank and the negative on the other, make the "
        "links equal and short, or lead every string to common busbars",
        "sharing of a ladder of equal batteries and links, solved exactly [derived]; 110 %: common practice, no "
        "single source"},
    RuleInfo{"sharing/circulating", Level::warning, "0.1.0",
             "with every load off, a battery charges another at more than a hundredth of its capacity an hour",
             "the bank wears itself out at rest, and the sharing under load starts uneven",
             "fully charge every battery on its own before joining them",
             "computed at rest; C/100: common practice, no "
             "single source"},
};

void check_sharing(Seen const& seen, Findings& findings);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/rules/families/sharing_inl.hpp"
#endif
