// Why is a part of a planned bank what it is?
#pragma once

#include <string>

namespace bankwright {

// One thing that was chosen, by which rule or part of the wish, and what the next smaller would have broken.
struct PlanChoice {
    std::string what;       // "strings in parallel"
    std::string chosen;     // "3"
    std::string decided_by; // "a run of 4 h down to 50 % of charge"
    std::string less;       // "2"; empty where there is nothing less
    std::string broken;     // "the run ends after 2 h 41 min"
};

} // namespace bankwright
