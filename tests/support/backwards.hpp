// The findings that the report tests and the goldens show: written by hand, so that the rules may change their words.
#pragma once

#include "bankwright/findings/rule_info.hpp"
#include "bankwright/findings/verdict.hpp"

#include <fstream>
#include <sstream>
#include <string>
#include <vector>

namespace support {

inline std::string read_file(std::string const& path) {
    std::ifstream file(path, std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

inline bankwright::Verdict backwards() {
    using bankwright::Finding;
    using bankwright::Level;
    bankwright::Verdict verdict;
    verdict.file = "backwards.toml";
    verdict.text = read_file(BANKWRIGHT_SOURCE_DIR "/tests/golden/backwards.toml");
    Finding reversed;
    reversed.rule = "wiring/reversed-battery";
    reversed.message = "battery `aft` opposes the others of its string: 0 V at `troll` where 24 V is declared";
    reversed.help = "exchange the leads on `aft`";
    reversed.parts = {"aft", "fore"};
    reversed.found = 0.0;
    reversed.allowed = 24.0;
    reversed.unit = "V";
    reversed.region = {{9, 1}, {9, 67}};
    reversed.consequences = {"`troll` gets no voltage", "0 V where the system is 24 V"};
    Finding far;
    far.rule = "protection/too-far";
    far.level = Level::error;
    far.message = "30 in of cable between `fore+` and `CB`, 7 in allowed";
    far.help = "put `CB` within 7 in of the post";
    far.parts = {"feed"};
    far.key = "length";
    far.found = 0.762;
    far.allowed = 0.1778;
    far.unit = "m";
    far.region = {{15, 60}, {15, 76}};
    far.accepted = true;
    far.accepted_because = "the cable is in conduit, inside the battery box";
    Finding capacity;
    capacity.rule = "matching/mixed-capacity";
    capacity.level = Level::warning;
    capacity.message = "`aft` holds 80 Ah, `fore` 100 Ah: they differ by 20 %, 5 % allowed";
    capacity.help = "use batteries of one capacity";
    capacity.parts = {"aft", "fore"};
    capacity.key = "capacity";
    capacity.found = 20.0;
    capacity.allowed = 5.0;
    capacity.unit = "%";
    capacity.region = {{9, 47}, {9, 65}};
    Finding bank_wide;
    bank_wide.rule = "conductor/unequal-links";
    bank_wide.level = Level::note;
    bank_wide.message = "links differ in length";
    verdict.findings = {reversed, capacity, bank_wide, far};
    return verdict;
}

inline bankwright::Verdict nothing_wrong() { return {"good.toml", "bankwright = 1\n", "3S1P", {}}; }

inline constexpr bankwright::RuleInfo reversed_battery{"wiring/reversed-battery",
                                                       bankwright::Level::error,
                                                       "0.1",
                                                       "a battery that opposes the others of its string",
                                                       "it is charged backwards and destroyed",
                                                       "exchange its leads",
                                                       "common practice, no single source"};
inline constexpr bankwright::RuleInfo mixed_capacity{
    "matching/mixed-capacity",          bankwright::Level::warning,  "0.1",
    "capacities in series that differ", "the smallest ends the run", "use batteries of one capacity",
    "common practice, no single source"};

inline std::vector<bankwright::RuleInfo const*> some_rules() { return {&mixed_capacity, &reversed_battery}; }

} // namespace support
