// Between which times does a run lie, for all that its bank's file leaves open?
//
// Two runs more: one of a bank in which everything assumed lies where the run is shorter, one where it is longer.
// Capacity and, where the file states no health, wear by what a label leaves open (analyses/spreads.hpp), Peukert's
// exponent by its usual range and the internal resistance by its spread, where the file states none.
#pragma once

#include "bankwright/analyses/discharge.hpp"
#include "bankwright/bank/bank.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/units/quantities.hpp"

#include <optional>

namespace bankwright {

struct TimeRange {
    Duration low{};
    Duration high{};
};

struct RunRange {
    TimeRange runtime;
    std::optional<TimeRange> to_reserve; // none if one of the two never comes down to it
};

// A time as near as anybody knows it: to five minutes from half an hour on, to whole ones from three minutes on.
Duration as_well_as_known(Duration);

// Throws as discharge().
RunRange run_range(Bank const& bank, DischargeOptions options);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/run_range_inl.hpp"
#endif
