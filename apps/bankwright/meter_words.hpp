// How far may the meter be off? Reads it as it stands in a meter's manual: "0.5 % + 2 digits".
#pragma once

#include "bankwright/analyses/hookup.hpp"

#include <string>

// Empty if all is well, else what was found and what was expected.
std::string read_meter(std::string const& typed, bankwright::HookupOptions& options);
