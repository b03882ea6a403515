// matching: do these batteries belong together?
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/rules/rule.hpp"

#include <array>

namespace bankwright {

inline constexpr std::array matching_rules{
    RuleInfo{"matching/mixed-chemistry", Level::error, "0.1.0", "batteries of different chemistry in one bank",
             "they differ in voltage, charge limits and cut-off: one is always overcharged, or flat, while the other "
             "is not",
             "make the bank of one chemistry", "common practice, no single source"},
    RuleInfo{"matching/mixed-voltage", Level::error, "0.1.0",
             "batteries of different nominal voltage in parallel (a warning in series)",
             "in parallel the higher one keeps driving current through the lower one; in series they differ in "
             "kind and "
             "rarely match in capacity",
             "use batteries of one nominal voltage",
             "parallel batteries must be equal in voltage: Lessons in "
             "Electric Circuits, vol. I, ch. 11 [read]"},
    RuleInfo{"matching/mixed-capacity", Level::warning, "0.1.0",
             "batteries in series whose usable capacities (rated capacity times health) differ by more than 5 %",
             "the same current flows through all of them, so the smallest is flat first and is then driven backwards",
             "put batteries of one capacity and age in a string",
             "series batteries must be equal in capacity: Lessons in Electric Circuits, vol. I, ch. 11 [read]; "
             "5 %: common practice"},
    RuleInfo{
        "matching/weak-cell", Level::warning, "0.1.0",
        "a battery with cells that hold less than its others, or none; or one that rests (`emf`) half a cell's voltage "
        "or more below an empty one",
        "the same current flows through all cells of a battery: the weak one is empty first, and the others then drive "
        "it backwards, which ruins it",
        "replace the battery; until then end every run before the weak cell is empty",
        "a cell of less capacity in a string is driven into reversal: common practice, no single source; the charge at "
        "which it is empty is charge balance in series"},
    RuleInfo{"matching/mixed-age", Level::warning, "0.1.0", "batteries made more than 6 months apart in one bank",
             "older batteries hold less and have a higher resistance, and pull the new ones down to their own state",
             "replace all batteries of a bank at once", "common practice, no single source"},
    RuleInfo{
        "matching/mixed-charge", Level::warning, "0.1.0",
        "states of charge that would drive a current above the battery's limit when strings are paralleled, or that "
        "differ by more than 10 % in one series string",
        "the fuller battery charges the emptier one as fast as the wire lets it; in a string the emptiest ends the run",
        "fully charge every battery, one by one, before joining them",
        "computed by solving the bank with every load "
        "off; the limit is the battery's own max_charge or max_discharge, else 0.3 C for lead-acid and 0.5 C for "
        "lithium, common practice"},
    RuleInfo{"matching/series-limit", Level::error, "0.1.0", "more batteries in series than one of them allows",
             "the protective disconnect inside it, or its case, is not made for the voltage",
             "use fewer in series, or batteries made for it", "the battery's own max_series"},
    RuleInfo{"matching/parallel-limit", Level::error, "0.1.0",
             "more strings in parallel than one of the batteries allows",
             "the fault current that the others feed into it exceeds what it is made for",
             "use fewer strings, or batteries made for it", "the battery's own max_parallel"},
};

void check_matching(Seen const& seen, Findings& findings);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/rules/families/matching_inl.hpp"
#endif
