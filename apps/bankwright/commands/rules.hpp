// `bankwright rules [ID]`: what is looked for, why, and where does the number come from?
#pragma once

#include "command.hpp"

#include <string>

struct RulesCommand {
    static constexpr char name[] = "rules";
    static constexpr char about[] = "What is looked for, why it matters, what to do, and where it comes from";

    std::string id; // of one rule, or a family; empty: all
    Format format = Format::text;

    Usage usage(); // what is typed goes into the members above
    Outcome run(bool color) const;
};
