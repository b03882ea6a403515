// What stands across a weak cell while its battery gives a current?
//
// Its own voltage less what drops across its resistance: nothing less I r once it is empty, which is negative. That
// such a cell goes to zero and then turns is common practice; the voltage that it builds up chemically, the wrong way
// round, in the hours after is not modeled (no published course of it was found).
#pragma once

#include "bankwright/devices/battery.hpp"

namespace bankwright {

// Of one weak cell, when the sound ones stand at this charge and the battery gives this current (positive). Throws
// std::invalid_argument without `weak_cells` or a chemistry.
Voltage weak_cell_voltage(Battery const&, StateOfCharge of_the_sound, Current, Temperature ambient);

} // namespace bankwright

#include "bankwright/linkage.hpp"
#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/devices/battery_reversal_inl.hpp"
#endif
