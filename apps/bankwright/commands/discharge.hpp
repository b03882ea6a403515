// `bankwright discharge FILE`: how long does it run, which battery ends the run, how does the sharing drift?
#pragma once

#include "bankwright/network/moment.hpp"
#include "bankwright/units/fractions.hpp"
#include "bankwright/units/quantities.hpp"
#include "command.hpp"

#include <optional>
#include <string>

struct DischargeCommand {
    static constexpr char name[] = "discharge";
    static constexpr char about[] =
        "How long it runs, which battery ends the run, and how charge and current change along the way";

    std::string file; // "-": standard input
    Format format = Format::text;
    bankwright::Moment moment;
    std::string duty; // the duty file; empty: none
    std::optional<bankwright::Duration> longest;
    std::optional<bankwright::Duration> rest;
    std::optional<bankwright::StateOfCharge> reserve; // none: the file's

    Usage usage(); // what is typed goes into the members above
    Outcome run(bool color) const;
};
