// What does the meter read between two points of a half-made bank, how far may it be off, and what would it read if
// something were wrong?
#pragma once

#include "bankwright/analyses/emf_range.hpp"
#include "bankwright/analyses/hookup/hookup_mistakes.hpp"
#include "bankwright/analyses/hookup/partial_bank.hpp"
#include "bankwright/analyses/hookup_steps.hpp"
#include "bankwright/linkage.hpp"

#include <optional>
#include <utility>
#include <vector>

namespace bankwright {

class HookupMeter {
public:
    HookupMeter(Bank const& bank, PartialBank const& partial, HookupOptions const& options);

    // Between two nodes; black is then the one at the lower potential.
    MeterReading read(Made const& made, Potentials const& potentials, int red, int black) const;
    MeterReading read_battery(std::size_t battery, std::vector<PossibleMistake> const& mistakes) const; // alone

    double error(double volts) const;                                         // [V] the meter's own
    bool tells(MeterReading const& right, std::optional<double> wrong) const; // is the wrong reading not a right one?
    std::vector<WrongReading> merged(std::vector<Cause> causes) const;
    EmfRange const& range(std::size_t battery) const { return ranges_[battery]; }

private:
    PartialBank const& partial_;
    HookupOptions options_;
    std::vector<EmfRange> ranges_; // by battery
    double widest_ = 0.0;          // [V] half the widest of them
};

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/hookup/hookup_meter_inl.hpp"
#endif
