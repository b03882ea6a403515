// `bankwright hookup FILE`: in which order is it put together, and what must the meter read at each step? With --log:
// what did it read, may the next step be made, and if not, why?
#pragma once

#include "bankwright/analyses/hookup_steps.hpp"
#include "checked_file.hpp"
#include "command.hpp"

#include <string>

struct HookupCommand {
    static constexpr char name[] = "hookup";
    static constexpr char about[] = "The order in which to connect it, what the meter must read at each step, and what "
                                    "a wrong reading means; then how to take it apart";

    std::string file; // "-": standard input
    std::string log;  // empty: nothing is asked and nothing judged
    Format format = Format::text;
    bankwright::HookupOptions options;

    Usage usage(); // what is typed goes into the members above
    Outcome run(bool color) const;

private:
    Outcome run_with_log(CheckedFile checked, bool color) const;
};
