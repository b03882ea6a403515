// What is shown on a drawing beside the wiring itself.
#pragma once

#include "bankwright/analyses/operating_point.hpp"
#include "bankwright/findings/finding.hpp"

#include <optional>
#include <string>

namespace bankwright::drawing {

struct DrawOptions {
    std::optional<OperatingPoint> point;    // volts at terminals, amperes along conductors
    std::string moment;                     // at which moment that is: "at full throttle"; empty: as the file describes
    std::optional<std::string> arrangement; // "3S1P"
    Findings findings;                      // marked where they are and listed below; accepted ones are left out
    bool alone = true;                      // false: the page that it is put into lists findings and says the caution
    std::string prefix = "bankwright";      // of every id and class, so that several drawings can share a page
};

} // namespace bankwright::drawing
