// What was taken for granted of a bank because its file does not say it, each in a few words that a line can hold.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/linkage.hpp"

#include <string>
#include <vector>

namespace bankwright {

// What is asked: currents that flow now, how long a run or a charge takes, or all of these.
enum class Asked { currents, run, charge, everything };

// "resistance of `A` and `B` by chemistry and capacity, within 40 %", in the order of how much they may change.
// `part_throttle`: the moments asked for have motors between off and full.
std::vector<std::string> assumptions(Bank const& bank, Asked asked, bool part_throttle = false);

// "assumed: ...; ...\n"; nothing if there is none.
std::string assumed_line(std::vector<std::string> const& assumptions);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/assumption_words_inl.hpp"
#endif
