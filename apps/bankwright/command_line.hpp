// What did the user ask for? Turns the arguments into one run: of a command, of help, or of what is wrong with them.
#pragma once

#include "command.hpp"

Run read_command_line(int argc, char const* const* argv);
