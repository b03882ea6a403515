// conductor: is the copper thick enough for what flows in it, short enough for what is left at its end, and of the
// right color?
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/rules/rule.hpp"

#include <array>

namespace bankwright {

inline constexpr std::array conductor_rules{
    RuleInfo{
        "conductor/over-ampacity", Level::error, "0.1.0",
        "a current above the ampacity for the conductor's size, insulation temperature, engine space and bundling, "
        "with every motor at full throttle or all that is downstream of it at nameplate current",
        "the insulation softens and the conductor can set fire to what it touches",
        "use the thicker conductor that the finding names, better insulation, or less bundling",
        "33 CFR 183.425 Table 5 [read] with its note 1 [quoted: trade reprints; recalled for 80, 125 and 200 degC]; "
        "bundling by UL 1426 as ABYC E-11 applies it below 50 V [quoted: trade reprint]"},
    RuleInfo{
        "conductor/voltage-drop", Level::warning, "0.1.0",
        "more than 3 %, or the file's own `drop`, of the system voltage lost out and back between the battery posts "
        "and the terminals of a motor "
        "or load at full throttle (an error above 10 %), the copper as warm as its current makes it, with no conductor "
        "taken as better than the standard's own formula makes it",
        "the motor turns slower, and what is lost heats the conductors and the joints",
        "use thicker or shorter conductors, and clean and tighten every joint",
        "ABYC E-11 11.14.2.6, 3 % for critical and 10 % for other circuits, and its formula CM = 10.75 I L / E over "
        "least "
        "areas [quoted: owners' forum, a chandler's reprint]"},
    RuleInfo{"conductor/undersized-jumper", Level::warning, "0.1.0",
             "a series jumper with less copper than the main cable that it is in series with",
             "it carries the same current and is the hottest piece of the circuit, right on top of a battery",
             "make the jumper the same size as the main cable", "common practice, no single source"},
    RuleInfo{
        "conductor/too-small", Level::warning, "0.1.0",
        "a conductor below 16 AWG run separately, or below 18 AWG in a sheath, out of which 18 AWG may reach 30 in "
        "(762 mm) at most",
        "it is mechanically too weak for a boat, however little it carries", "use 16 AWG or thicker",
        "33 CFR 183.425(d), (e) and (f) [read]; in mm2 1 and 0.75, ISO 10133 clause 7.7 [quoted: a reprint]"},
    RuleInfo{"conductor/color", Level::warning, "0.1.0",
             "red on a conductor of the negative side, black or yellow on the positive side, green on either",
             "the next person trusts the color and lands it on the wrong post",
             "use the right color, or mark both ends with tape or sleeve of the right color",
             "marine DC colors: red positive, black or yellow negative, green bonding [recalled]"},
    RuleInfo{"conductor/unequal-links", Level::note, "0.1.0", "links of parallel strings that differ in size or length",
             "the string behind the better link carries more", "make all links of one side alike",
             "common practice, no single source"},
};

void check_conductors(Seen const& seen, Findings& findings);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/rules/families/conductor_inl.hpp"
#endif
