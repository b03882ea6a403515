// `bankwright check FILE...`: what is wrong with these banks?  FILE: a file, a folder, a pattern.
#pragma once

#include "bankwright/findings/level.hpp"
#include "bankwright/rules/settings.hpp"
#include "outcome.hpp"

#include <string>
#include <vector>

struct CheckRequest {
    std::vector<std::string> files; // "-": standard input
    Format format = Format::text;
    bool all = false;           // consequences and accepted findings too
    std::string output;         // the file that the findings go into; empty: standard output
    bankwright::Settings asked; // on the command line: wins over the settings of a folder
};

Outcome run(CheckRequest const& request, bool colour);
