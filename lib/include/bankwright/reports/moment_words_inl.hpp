// Body of moment_words.hpp.
#pragma once

#include "bankwright/reports/moment_words.hpp"
#include "bankwright/units/print.hpp"

namespace bankwright {

BANKWRIGHT_INLINE std::string in_words(Moment const& moment) {
    switch (moment.loads) {
    case LoadsAre::at_rest:
        return "with every load off";
    case LoadsAre::constant_current:
        return "at " + print(moment.current);
    case LoadsAre::as_described:
        break;
    }
    return moment.throttle ? "at a throttle of " + print(*moment.throttle) : std::string();
}

} // namespace bankwright
