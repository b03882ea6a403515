// `bankwright tolerance FILE`: how far do the answers spread, how bad can it get, what matters, which rules are set
// off?
#pragma once

#include "bankwright/analyses/tolerance.hpp"
#include "command.hpp"

#include <cstddef>
#include <string>

struct ToleranceCommand {
    static constexpr char name[] = "tolerance";
    static constexpr char about[] = "How far voltages, currents and run time spread when nothing is quite as stated, "
                                    "the worst case, what matters most, and which rules that sets off";

    std::string file; // "-": standard input
    Format format = Format::text;
    bankwright::ToleranceOptions options;
    std::size_t tried = 200; // banks on which every rule is tried

    Usage usage(); // what is typed goes into the members above
    Outcome run(bool color) const;
};
