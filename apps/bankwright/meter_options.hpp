// How far may the meter and the batteries of a hook-up be off? --meter, --resolution and --charge-within.
#pragma once

#include "bankwright/analyses/hookup_steps.hpp"
#include "option.hpp"

#include <vector>

void add_meter(std::vector<Option>& options, bankwright::HookupOptions& hookup);
