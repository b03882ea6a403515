// The two output streams: do they take color, and how is an outcome written to them?
#pragma once

#include "outcome.hpp"

#include <string_view>

// A terminal that is not dumb, and no NO_COLOR in the environment.
bool standard_output_takes_color();

// Not dumb: a line on it can be erased.
bool standard_error_is_a_terminal();

// What to say when the program itself failed.
Outcome own_fault(std::string_view what);

// Writes both texts, each in one go, where they belong, and returns the exit status. A reader that has gone away is no
// trouble. A full disk, a closed stream, a file that cannot be made: `unusable`, as no fault of the program.
ExitCode deliver(Outcome const& outcome);
