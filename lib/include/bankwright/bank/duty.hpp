// A trip as its crew plans it: how far the throttle is open, and for how long.
#pragma once

#include "bankwright/units/fractions.hpp"
#include "bankwright/units/quantities.hpp"

#include <vector>

namespace bankwright {

// One stretch; at a throttle of 0 the motors lie still.
struct DutyLeg {
    Throttle throttle = Throttle::of(1.0);
    Duration duration{};
    friend bool operator==(DutyLeg const&, DutyLeg const&) = default;
};

struct Duty {
    std::vector<DutyLeg> legs;
    bool repeat = false; // the legs start over until the bank is done
    friend bool operator==(Duty const&, Duty const&) = default;
};

} // namespace bankwright
