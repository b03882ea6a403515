// What a renderer of short circuits is given: one file's shorts.
#pragma once

#include "bankwright/analyses/short_circuit.hpp"
#include "bankwright/findings/finding.hpp"

#include <optional>
#include <string>

namespace bankwright {

struct ShortCircuited {
    std::string file;                       // as the user named it
    std::optional<std::string> arrangement; // "3S1P", none where the wiring is no such thing
    ShortCircuitResult result;
    FindingCounts counts; // what `check` has to say about the same bank
};

} // namespace bankwright
