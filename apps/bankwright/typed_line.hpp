// What somebody types at the terminal, a line at a time.
#pragma once

#include <optional>
#include <string>

// Without the blanks around it; none at the end of input.
std::optional<std::string> typed_line();
