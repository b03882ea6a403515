// `bankwright recharge FILE`: how long until the chargers have filled the bank, and is every battery full then?
#pragma once

#include "bankwright/units/fractions.hpp"
#include "bankwright/units/quantities.hpp"
#include "command.hpp"

#include <optional>
#include <string>

struct RechargeCommand {
    static constexpr char name[] = "recharge";
    static constexpr char about[] =
        "How long the chargers take, stage by stage, and whether every battery ends up full";

    std::string file; // "-": standard input
    Format format = Format::text;
    std::optional<bankwright::StateOfCharge> charge; // of every battery at the start
    std::optional<bankwright::Duration> longest;

    Usage usage(); // what is typed goes into the members above
    Outcome run(bool color) const;
};
