// Is this the name of a rule, or of a family of rules?
#pragma once

#include <string>

// Empty if it is; otherwise what is wrong with it, with the nearest name.
std::string unknown_rule(std::string const& id);
