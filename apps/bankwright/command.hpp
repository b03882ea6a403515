// What is a command to the command line? A name, a line about it, and how it is used and run.
#pragma once

#include "option.hpp"
#include "outcome.hpp"

#include <functional>
#include <string>
#include <vector>

using Run = std::function<Outcome(bool color)>;

struct Usage {
    std::vector<Option> options;
    std::string closing;                    // below the options in its help: an example
    Run run{};                              // once all that was typed has been read
    std::function<std::string()> problem{}; // what no option can see by itself; empty text: none
};

struct Command {
    char const* name;
    char const* about;
    Usage (*usage)(); // what it owns lives as long as its run
};

// In the order of the help. A command is one pair of files in commands/ and one line in commands.cpp.
std::vector<Command> const& all_commands();
