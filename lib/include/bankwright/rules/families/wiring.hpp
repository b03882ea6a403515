// wiring: is everything on the right post? Found on the graph of the wiring, before any resistance is looked at; the
// solver then says how bad it is.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/rules/rule.hpp"

#include <array>

namespace bankwright {

inline constexpr std::string_view graph_source =
    "Kirchhoff's voltage law: the voltages along the wiring must not contradict each other [derived]";

inline constexpr std::array wiring_rules{
    RuleInfo{
        "wiring/shorted-battery", Level::error, "0.1.0",
        "one battery whose two posts are joined by conductors and closed devices alone",
        "nothing but the battery's internal resistance limits the current: hundreds to thousands of amperes, enough to "
        "melt a wrench, burst the case and start a fire",
        "remove the conductor that the finding names, or land its end on the post that the finding names",
        graph_source},
    RuleInfo{
        "wiring/shorted-loop", Level::error, "0.1.0",
        "a closed loop of conductors, closed devices and batteries whose voltages do not cancel",
        "nothing but wire and internal resistance limits the current around that loop, whether any load is on or not",
        "move the end, or remove the conductor, that the finding names before the last lead is landed: the short flows "
        "as "
        "soon as that touches, breaker open or not",
        graph_source},
    RuleInfo{
        "wiring/reversed-battery", Level::error, "0.1.0",
        "a battery that opposes the others of its string, or the one battery whose reversal makes the bank right",
        "in a string it takes twice its voltage from the bank and is charged backwards; across other batteries it is a "
        "dead short",
        "turn the battery around, or swap what is landed on its two posts", graph_source},
    RuleInfo{"wiring/reversed-load", Level::error, "0.1.0",
             "a motor or load whose + is at the lower potential (of a charger see charging/polarity)",
             "electronics can be destroyed at once; a motor runs backwards", "swap its two leads", graph_source},
    RuleInfo{
        "wiring/open-circuit", Level::error, "0.1.0",
        "a motor or load with no closed path to the bank, with every switch and breaker closed and connectors mated (a "
        "warning for a charger that reaches no battery)",
        "it cannot work, and a conductor that is missing here may be landed somewhere else",
        "close the gap that the finding names", graph_source},
    RuleInfo{"wiring/unused-battery", Level::error, "0.1.0", "a battery that can carry no current to any load",
             "it is dead weight, and a sign that a conductor is missing or on the wrong post",
             "land the conductor that the finding names where it belongs", graph_source},
    RuleInfo{"wiring/system-voltage", Level::error, "0.1.0",
             "the open-circuit voltage at a motor or load is not that of the declared system or, where none is "
             "declared, of the "
             "motor's nameplate",
             "too much destroys it, too little leaves it weak; either way the batteries are not joined as meant",
             "join as many batteries in series as the system voltage asks for", graph_source},
    RuleInfo{"wiring/unequal-strings", Level::error, "0.1.0",
             "parallel strings with different numbers of batteries, or of different nominal voltage (a warning where "
             "only the numbers differ)",
             "the string of the higher voltage keeps driving current through the other",
             "give every string the same number of the same batteries", graph_source},
    RuleInfo{"wiring/mid-string-tap", Level::warning, "0.1.0", "a load that draws from only part of a series string",
             "the tapped batteries are emptied first and then overdischarged or reversed by the others, and a charger "
             "across the string overcharges the rest",
             "feed it from a converter across the whole bank, or from a battery of its own",
             "common practice, no single source"},
    RuleInfo{"wiring/uneven-cross-links", Level::warning, "0.1.0",
             "strings joined part of the way up at some points and not at others",
             "a cross-link carries the difference between the strings that it joins: with some missing, or one too "
             "many, the "
             "batteries near it work harder than the rest",
             "join every string at that level, or none", "common practice, no single source"},
    RuleInfo{
        "wiring/missing-link", Level::warning, "0.1.0",
        "batteries of one voltage that are joined at one end alone, so that each feeds other loads (a note where it is "
        "their negative that they share, as house and starting batteries do)",
        "they share neither the load nor the charge; in what was meant to be one bank a link is missing",
        "join their other ends too, or leave each its own loads and say so in [[accept]]",
        "common practice, no single source"},
    RuleInfo{"wiring/loose-end", Level::warning, "0.1.0",
             "a conductor end, or a device terminal, at which nothing else is joined",
             "a live loose end is a short waiting for metal; an unused terminal may mean a forgotten conductor",
             "land it, insulate it or remove it", "common practice, no single source"},
    RuleInfo{"wiring/past-shunt", Level::warning, "0.1.0",
             "a current that returns past the shunt: a load or charger landed on its battery side, or a battery of its "
             "bank on the other",
             "the meter counts only what flows through the shunt: what it shows of the charge left is then wrong, and "
             "the more so the longer it runs",
             "land every negative but those of the bank's own batteries on the load side of the shunt",
             "common practice, no single source"},
};

void check_wiring(Seen const& seen, Findings& findings);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/rules/families/wiring_inl.hpp"
#endif
