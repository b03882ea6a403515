// `bankwright labels FILE`: a flag for every conductor's end and a label for the box, to be printed and stuck on.
#pragma once

#include "bankwright/page/label_sheets.hpp"
#include "command.hpp"

#include <string>

struct LabelsCommand {
    static constexpr char name[] = "labels";
    static constexpr char about[] =
        "A flag label for each end of each conductor, and one for the box, on sheets to print";

    std::string file;  // "-": standard input
    std::string asked; // the word of --format; empty: as the name of the output ends, else html
    OutputFile output;
    bankwright::page::Sheet sheet;

    Usage usage(); // what is typed goes into the members above
    Outcome run(bool color) const;
};
