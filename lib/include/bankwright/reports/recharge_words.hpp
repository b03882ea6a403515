// How is it said what ended a charge, and through which stages an output went?
#pragma once

#include "bankwright/analyses/recharge.hpp"
#include "bankwright/linkage.hpp"

#include <string>

namespace bankwright::charge_words {

std::string ending(RechargeResult const& run);
// "about 5 h 30 min (4 h 55 min to 6 h 5 min)"
std::string lasting(RechargeResult const& run);
std::string stages(OutputStages const& output);

} // namespace bankwright::charge_words

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/recharge_words_inl.hpp"
#endif
