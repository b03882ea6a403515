// How is it said what ended a run, and where its energy went?
#pragma once

#include "bankwright/analyses/discharge.hpp"
#include "bankwright/analyses/run_range.hpp"
#include "bankwright/linkage.hpp"

#include <optional>
#include <string>

namespace bankwright::run_words {

std::string ending(DischargeResult const& run);
// "about 1 h 35 min", as well as it is known.
std::string about(Duration time);
// The same with what is not known: "about 1 h 35 min (1 h 15 min to 1 h 50 min)".
std::string about(Duration time, std::optional<TimeRange> const& range);
std::string watt_hours(Energy energy);
std::string energy(EnergySplit const& split);
bool happens_at_once(Duration time);
// At the head of a run or a charge.
std::string lasting(Duration time);
std::string drop_out(DroppedOut const& gone);
std::string reversal(ReversedCell const& cell);

} // namespace bankwright::run_words

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/discharge_words_inl.hpp"
#endif
