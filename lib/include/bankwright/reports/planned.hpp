// What a renderer of a plan is given: the wish, the banks that will do, and the file of the first.
#pragma once

#include "bankwright/planning/plan.hpp"
#include "bankwright/planning/wish.hpp"

#include <optional>
#include <string>
#include <vector>

namespace bankwright {

struct Planned {
    std::optional<Wish> wish; // none where it could not be understood
    PlanResult result;        // its problems are those of the wish where there is none
    std::string text;         // of the file of the proposed bank
};

} // namespace bankwright
