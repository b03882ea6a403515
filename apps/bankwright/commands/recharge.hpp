// `bankwright recharge FILE`: how long until the chargers have filled the bank, and is every battery full then?
#pragma once

#include "bankwright/units/fractions.hpp"
#include "bankwright/units/quantities.hpp"
#include "outcome.hpp"

#include <optional>
#include <string>

struct RechargeRequest {
    std::string file; // "-": standard input
    Format format = Format::text;
    std::optional<bankwright::StateOfCharge> charge; // of every battery at the start
    std::optional<bankwright::Duration> longest;
};

Outcome run(RechargeRequest const& request, bool colour);
