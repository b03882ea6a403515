// `bankwright compare A B [C...]`: layouts side by side, what differs first.
#pragma once

#include "command.hpp"

#include <string>
#include <vector>

struct CompareCommand {
    static constexpr char name[] = "compare";
    static constexpr char about[] =
        "Layouts side by side, what differs first: findings, run time, voltages, sharing, short "
        "circuits, copper, mass and price";

    std::vector<std::string> files;
    Format format = Format::text;
    OutputFile output;

    Usage usage(); // what is typed goes into the members above
    Outcome run(bool color) const;
};
