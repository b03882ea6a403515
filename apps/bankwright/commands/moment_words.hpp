// At which moment are the readings of a picture taken, in words?
#pragma once

#include "bankwright/network/moment.hpp"
#include "bankwright/units/print.hpp"

#include <string>

// Empty: as the file describes it.
inline std::string in_words(bankwright::Moment const& moment) {
    using bankwright::LoadsAre;
    switch (moment.loads) {
    case LoadsAre::at_rest:
        return "with every load off";
    case LoadsAre::constant_current:
        return "at " + bankwright::print(moment.current);
    case LoadsAre::as_drawn:
        break;
    }
    return moment.throttle ? "at a throttle of " + bankwright::print(*moment.throttle) : std::string();
}
