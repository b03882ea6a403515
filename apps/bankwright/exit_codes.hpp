// What does the command's exit status say? A contract with scripts.
#pragma once

enum class ExitCode {
    clean = 0,     // nothing at or above --fail-on
    found = 1,     // something was, or there is no operating point
    unusable = 2,  // the input could not be read, the results not written, or the command was used wrongly
    own_fault = 3, // the program itself failed
};
