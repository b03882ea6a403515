// `bankwright draw FILE -o bank.svg`: how is it wired, as a picture with the readings and the findings on it?
#pragma once

#include "bankwright/network/moment.hpp"
#include "command.hpp"

#include <string>

struct DrawCommand {
    static constexpr char name[] = "draw";
    static constexpr char about[] = "The bank as a wiring diagram, with readings and findings on it: SVG";

    std::string file; // "-": standard input
    OutputFile output;
    bankwright::Moment moment;

    Usage usage(); // what is typed goes into the members above
    Outcome run(bool color) const;
};
