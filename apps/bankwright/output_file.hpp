// Writes a report into a file: all of it or nothing, and never over a file that was read for it.
#pragma once

#include "outcome.hpp"

#include <string>
#include <vector>

// The input that `output` is, under whatever name; empty if it is none of them.
std::string input_that_is(std::string const& output, std::vector<std::string> const& inputs);

// Into a new file beside it, which then takes its name: whoever reads it finds the old text or the new one. What is no
// ordinary file (a pipe, a device) is written to as it is.
// What must outlive a loss of power (`is_durable`) is on the disk when this returns.
// A read-only file and one behind a link are left alone unless they are forced. Empty, or why nothing was written.
std::string write_file(OutputFile const& file, std::string const& text);
