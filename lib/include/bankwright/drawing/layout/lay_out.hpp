// The whole drawing of a bank, but for its words: places of all parts and terminals, and the line of each conductor.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/drawing/drawing.hpp"
#include "bankwright/linkage.hpp"

namespace bankwright::drawing {

// The same bank gives the same drawing, to the last bit. Lines of different conductors cross, but never run on top of
// each other; none runs through a part; each ends in the pads of its own terminals. Loads and what feeds them stand to
// the right, and another of them moves no battery.
Drawing lay_out(Bank const& bank);

} // namespace bankwright::drawing

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/drawing/layout/lay_out_inl.hpp"
#endif
