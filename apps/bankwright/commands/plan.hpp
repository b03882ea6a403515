// `bankwright plan`: from a wish to a bank file, and why each part of it is what it is. Without options, at a terminal,
// it asks.
#pragma once

#include "bankwright/planning/wish_words.hpp"
#include "command.hpp"

#include <string>

struct PlanCommand {
    static constexpr char name[] = "plan";
    static constexpr char about[] =
        "From a wish (system, motor, run, run time) to a bank file that passes every rule, why "
        "each part is what it is, and what to buy; without options it asks";

    bankwright::WishWords words;
    std::string parts; // a part list in place of the usual ones; empty: none
    Format format = Format::text;
    OutputFile output;

    Usage usage(); // what is typed goes into the members above
    Outcome run(bool color) const;
};
