// `bankwright solve FILE`: what are the voltages and currents at the operating point?
#pragma once

#include "bankwright/network/moment.hpp"
#include "command.hpp"

#include <string>

struct SolveCommand {
    static constexpr char name[] = "solve";
    static constexpr char about[] = "Terminal voltages and the current in every part";

    std::string file; // "-": standard input
    Format format = Format::text;
    bankwright::Moment moment;

    Usage usage(); // what is typed goes into the members above
    Outcome run(bool color) const;
};
