// How far may the meter and the batteries be off? Reads the options of a hook-up as they are typed.
#pragma once

#include "bankwright/analyses/hookup.hpp"

#include <string>

// Each is empty if all is well, else what was found and what was expected.
std::string read_meter(std::string const& typed, bankwright::HookupOptions& options);         // "0.5 % + 2 digits"
std::string read_resolution(std::string const& typed, bankwright::HookupOptions& options);    // "0.01 V"
std::string read_charge_within(std::string const& typed, bankwright::HookupOptions& options); // "5 %"
