// `bankwright hookup FILE`: in which order is it put together, and what must the meter read at each step?
#pragma once

#include "bankwright/analyses/hookup_steps.hpp"
#include "command.hpp"

#include <string>

struct HookupCommand {
    static constexpr char name[] = "hookup";
    static constexpr char about[] = "The order in which to connect it, what the meter must read at each step, and what "
                                    "a wrong reading means; then how to take it apart";

    std::string file; // "-": standard input
    Format format = Format::text;
    bankwright::HookupOptions options;

    Usage usage(); // what is typed goes into the members above
    Outcome run(bool color) const;
};
