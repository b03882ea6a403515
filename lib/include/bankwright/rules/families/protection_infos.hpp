// What the rules of protection say about themselves.
#pragma once

#include "bankwright/findings/rule_info.hpp"

#include <array>

namespace bankwright {

inline constexpr std::array protection_rules{
    RuleInfo{
        "protection/missing", Level::error, "0.1.0",
        "a positive conductor fed by a battery with no breaker or fuse between it and the load; jumpers and links "
        "between the bank's own batteries and what cranks an engine excepted; a charger's leads, fed from the "
        "battery too, unless it is `fused`",
        "a fault anywhere along it is fed with all that the bank can give until something burns through",
        "put a breaker or fuse in the positive lead, close to the battery and easy to reach, and let nothing bypass it",
        "33 CFR 183.455(a), each ungrounded current-carrying conductor [read]; cranking conductors excepted: ABYC E-11 "
        "[recalled]; a charger's leads: common practice, no source"},
    RuleInfo{
        "protection/negative-side", Level::error, "0.1.0", "the only device sits in the negative conductor",
        "with the negative open the positive is still live, and a fault to anything grounded goes around the device",
        "move the breaker or fuse into the positive lead, close to the battery",
        "33 CFR 183.455(a), each ungrounded conductor [read]; breaker in the positive lead: common practice, no "
        "source"},
    RuleInfo{
        "protection/too-far", Level::error, "0.1.0",
        "a breaker or fuse further along the conductor from the battery post than 7 in (178 mm), the most where it "
        "cannot practically sit at the post; 40 in (1.02 m) where 7 in is not practical either and the "
        "conductor is enclosed all the way, 72 in (1.83 m) where it is so and fixed straight to the post",
        "the piece before the device is protected by nothing",
        "move the device closer to the battery post, or enclose the "
        "conductor all the way",
        "33 CFR 183.455(b)(1) and (2), 7 and 40 in where physically impractical otherwise [read]; ABYC E-11.10, 7 in "
        "[quoted: trade page]; 72 in [recalled]"},
    RuleInfo{
        "protection/rating-high", Level::error, "0.1.0",
        "a rating above the ampacity of the thinnest conductor that the device protects, or above the next "
        "standard size "
        "within 150 % of it",
        "the conductor burns before the device opens",
        "use the smaller rating, or the thicker conductor, that the finding "
        "names",
        "ABYC E-11.10, the next standard size [quoted: trade page], and from 50 V 33 CFR 183.455(c)(2) [read]; below "
        "50 V (c)(1) allows any rating up to 150 %, and up to there it is a warning [read]"},
    RuleInfo{"protection/rating-low", Level::warning, "0.1.0",
             "more current through the device at full throttle, or by the nameplates downstream, than its rating; of a "
             "breaker of class ul-489 more than 80 % of it for a run of three hours or more",
             "it opens in the middle of the run", "use a larger rating, as far as the conductor allows",
             "what a rating means, common practice; trip time by the standard of its class "
             "where that is known; 80 %: NEC (NFPA 70) 210.20(A) [recalled]"},
    RuleInfo{"protection/voltage", Level::error, "0.1.0",
             "a device whose voltage rating is below the circuit's nominal voltage; a warning where it is below the "
             "highest voltage of the bank, on charge",
             "its arc may not go out when it opens",
             "use a device rated for the charging voltage of the bank, for direct current",
             "33 CFR 183.455(d), of the nominal voltage [read in part]; that the charging voltage counts too: common "
             "practice, no source"},
    RuleInfo{
        "protection/interrupting", Level::error, "0.1.0",
        "a device that interrupts less than the largest of the computed prospective current (available short-circuit "
        "current) through it, ABYC E-11's "
        "table where all batteries state cranking amperes, and, as a warning, the 20 kA that E-11 asks of the main "
        "device of a bank above 2200 cranking amperes or 500 Ah whose makers' short-circuit current is not known; a "
        "warning too where E-11's table is met and the computation "
        "rests on cranking amperes or chemistry",
        "it welds or bursts instead of opening", "use a device that interrupts more, or one of a class made for it",
        "computed, bolted faults one at a time; ABYC E-11, table by cranking amperes [quoted: trade reprint], large "
        "banks [quoted: owners' forum]"},
    RuleInfo{"protection/parallel-string", Level::warning, "0.1.0",
             "three or more parallel strings, tied part of the way up or not, or any parallel ones of lithium or of "
             "more than 500 Ah together, without a "
             "device each",
             "a battery that fails inside is fed by all the others, through wire that nothing protects",
             "put a fuse at one end of every string",
             "ABYC E-11.10.1.4.1 of July 2025, above 500 Ah [quoted: owners' forum]; one fuse a battery: "
             "Lessons in Electric Circuits, vol. I, ch. 11 [read]; from three strings on: common practice"},
    RuleInfo{"protection/short-circuit-heat", Level::error, "0.1.0",
             "a device that by its known time-current band may open later than the conductor's insulation withstands a "
             "short "
             "circuit (I2t); a note, once, where the band of a device is not known",
             "the insulation is destroyed by the short circuit although the device opens",
             "use a faster device or a thicker conductor; state the `class` of the device, or its `trips`, where you "
             "know them",
             "IEC 60364-5-54, k2 S2 [quoted: reprints]; 160 degC as the end of 105 degC insulation [derived]"},
};

} // namespace bankwright
