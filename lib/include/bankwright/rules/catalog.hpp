// Every rule there is: one visible list, in the order in which a person should read the findings.
#pragma once

#include "bankwright/config/file_rules.hpp"
#include "bankwright/rules/families/charging.hpp"
#include "bankwright/rules/families/conductor.hpp"
#include "bankwright/rules/families/connection.hpp"
#include "bankwright/rules/families/load.hpp"
#include "bankwright/rules/families/matching.hpp"
#include "bankwright/rules/families/protection.hpp"
#include "bankwright/rules/families/sharing.hpp"
#include "bankwright/rules/families/wiring.hpp"
#include "bankwright/rules/solving.hpp"

#include <array>
#include <string_view>
#include <vector>

namespace bankwright {

inline constexpr std::array rule_families{
    RuleFamily{"file", file_rules, nullptr}, // reading looks for these
    RuleFamily{"wiring", wiring_rules, check_wiring},
    RuleFamily{"matching", matching_rules, check_matching},
    RuleFamily{"solve", solving_rules, check_solving},
    RuleFamily{"protection", protection_rules, check_protection},
    RuleFamily{"conductor", conductor_rules, check_conductors},
    RuleFamily{"connection", connection_rules, check_connections},
    RuleFamily{"sharing", sharing_rules, check_sharing},
    RuleFamily{"charging", charging_rules, check_charging},
    RuleFamily{"load", load_rules, check_loads},
};

inline std::vector<RuleInfo const*> all_rules() {
    std::vector<RuleInfo const*> all;
    for (auto const& family : rule_families)
        for (auto const& rule : family.rules)
            all.push_back(&rule);
    return all;
}

} // namespace bankwright
