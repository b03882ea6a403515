// `bankwright short-circuit FILE`: what flows into a short anywhere, what ends it, and does the copper live through it?
#pragma once

#include "command.hpp"

#include <string>

struct ShortCircuitCommand {
    static constexpr char name[] = "short-circuit";
    static constexpr char about[] =
        "What flows into a short anywhere in it, what ends that and how soon, and what each conductor survives";

    std::string file; // "-": standard input
    Format format = Format::text;

    Usage usage(); // what is typed goes into the members above
    Outcome run(bool color) const;
};
