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
    static constexpr std::size_t usual = static_cast<std::size_t>(-1);
    std::size_t samples = usual; // by the size of the bank, unless told
    std::size_t tried = usual;   // of them, those on which every rule is tried

    Usage usage(); // what is typed goes into the members above
    Outcome run(bool color) const;
};
