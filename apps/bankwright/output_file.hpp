// Writes a report into a file: all of it or nothing, and never over a file that was read for it.
#pragma once

#include "exit_codes.hpp"

#include <string>
#include <vector>

// The input that `output` is, under whatever name; empty if it is none of them.
std::string input_that_is(std::string const& output, std::vector<std::string> const& inputs);

struct Written {
    ExitCode status = ExitCode::clean; // unusable: no such place to write to; own_fault: a full disk, say
    std::string trouble;               // why; empty if it was written
};

// Into a new file beside it, which then takes its name: whoever reads it finds the old text or the new one. What is no
// ordinary file (a pipe, a device) is written to as it is.
Written write_file(std::string const& name, std::string const& text);
