// The two output streams: do they take colour, and how is an outcome written to them?
#pragma once

#include "outcome.hpp"

#include <string_view>

// A terminal that is not dumb, and no NO_COLOR in the environment.
bool standard_output_takes_colour();

// What to say when the program itself failed.
Outcome own_fault(std::string_view what);

// Writes both texts, each in one go, and returns the exit status. A reader that has gone away is no fault; a full disk
// is. A file that was asked for and cannot be written is a wrong usage.
ExitCode deliver(Outcome const& outcome);
