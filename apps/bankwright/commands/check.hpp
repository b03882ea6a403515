// `bankwright check FILE...`: what is wrong with these banks?  FILE: a file, a folder, a pattern.
#pragma once

#include "bankwright/findings/verdict.hpp"
#include "bankwright/rules/settings.hpp"
#include "command.hpp"

#include <string>
#include <vector>

struct CheckCommand {
    static constexpr char name[] = "check";
    static constexpr char about[] = "Say what is wrong with banks, why, and what to do";

    std::vector<std::string> files; // "-": standard input
    Format format = Format::text;
    bool all = false;           // consequences and accepted findings too
    OutputFile output;          // of the findings
    bankwright::Settings asked; // on the command line: wins over the settings of a folder

    Usage usage(); // what is typed goes into the members above
    Outcome run(bool color) const;

private:
    std::string print(bankwright::Verdicts const& verdicts, bool color) const;
};
