// How far may a value lie from what its file says, where the file does not say?
#pragma once

#include "bankwright/units/fractions.hpp"

namespace bankwright {

// Of every part whose file states no tolerance of its own. The charge's is in points.
struct Spreads {
    Spread resistance = Spread::percent(20); // inside a battery
    Spread charge = Spread::percent(2);
    Spread capacity = Spread::percent(5);
    Spread conductor = Spread::percent(2); // wire, without its joints
    Spread joint = Spread::percent(50);
    Spread contact = Spread::percent(50); // of breakers, fuses, switches and connectors
};                                        // all common practice, no source

// Of its rated capacity what a battery of which nobody states the health may have lost: at more it is due for another
// (80 % left: IEEE 450 and 1188 [recalled]).
inline constexpr double unknown_wear = 0.2;

} // namespace bankwright
