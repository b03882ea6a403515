// How is it said what ends a short, and when?
#pragma once

#include "bankwright/analyses/short_circuit.hpp"
#include "bankwright/linkage.hpp"

#include <string>

namespace bankwright::short_circuit_words {

std::string ended(ShortPlace const& place);   // "CB within 1.2 s", "nothing opens", "not sure: " and why
std::string needed(DeviceDuty const& device); // "5 kA (E-11, by cranking)": what it must interrupt, and by what
std::string band(FaultDevice const& device);  // "1.2 s to 20 s": what the standard says of the time to open

} // namespace bankwright::short_circuit_words

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/short_circuit_words_inl.hpp"
#endif
