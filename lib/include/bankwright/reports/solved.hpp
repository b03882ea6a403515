// What a renderer of a solution is given: one file's operating point.
#pragma once

#include "bankwright/analyses/operating_point.hpp"
#include "bankwright/findings/finding.hpp"

#include <optional>
#include <string>

namespace bankwright {

struct Solved {
    std::string file;                       // as the user named it
    std::string text;                       // what it says; empty where there is no file
    std::optional<std::string> arrangement; // "3S1P", none where the wiring is no such thing
    OperatingPoint point;
    FindingCounts counts; // what `check` has to say about the same bank
    Findings findings;    // why there is no operating point, where there is none
};

} // namespace bankwright
