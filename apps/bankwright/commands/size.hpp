// `bankwright size FILE`: which conductors, breakers and number of strings are enough, why no less, and what to cut.
#pragma once

#include "bankwright/sizing/sizing.hpp"
#include "command.hpp"

#include <string>

struct SizeCommand {
    static constexpr char name[] = "size";
    static constexpr char about[] = "The smallest conductors, breakers and number of strings with which the bank "
                                    "passes every rule, why no less, and a cut list";

    std::string file; // "-": standard input
    Format format = Format::text;
    bankwright::SizingOptions options;

    Usage usage(); // what is typed goes into the members above
    Outcome run(bool color) const;
};
