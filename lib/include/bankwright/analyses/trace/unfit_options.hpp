// Throws std::invalid_argument for a reading and for options that are out of their range.
#pragma once

#include "bankwright/analyses/trace/taken_reading.hpp"
#include "bankwright/analyses/trace_options.hpp"
#include "bankwright/network/option_limits.hpp"

#include <string>
#include <variant>

namespace bankwright::internal::tracing {

inline void refuse_unfit(TakenReading const& reading) {
    bankwright::refuse_unfit(reading.moment);
    if (auto const* const volts = std::get_if<VoltsRead>(&reading.what))
        refuse_if(shown_volts_problem(volts->reads), volts->red + " against " + volts->black, volts->reads);
    else if (auto const* const amps = std::get_if<AmpsRead>(&reading.what))
        refuse_if(shown_amperes_problem(amps->reads), amps->part, amps->reads);
}

inline void refuse_unfit_meter(double of_reading, int counts) {
    auto const share = Spread::of(of_reading);
    refuse_if(of_reading_problem(share), "of_reading", share);
    refuse_if(digits_problem(counts), "digits", std::to_string(counts));
}

inline void refuse_unfit(TraceOptions const& options) {
    refuse_unfit_meter(options.meter.of_reading, options.meter.counts);
    refuse_if(digit_problem(options.meter.digit), "resolution", options.meter.digit);
    refuse_unfit_meter(options.clamp.of_reading, options.clamp.counts);
    refuse_if(digit_problem(options.clamp.digit), "resolution of the clamp", options.clamp.digit);
    refuse_unless(options.spread.emf >= 0.0 && options.spread.emf <= 0.9, "spread of emf", options.spread.emf,
                  "0 to 0.9");
    refuse_unless(options.spread.resistance >= 0.0 && options.spread.resistance <= 0.9, "spread of resistance",
                  options.spread.resistance, "0 to 0.9");
    refuse_unless(options.explained > 0.0, "explained", options.explained, "above 0");
    refuse_unless(options.told_apart > 0.0, "told_apart", options.told_apart, "above 0");
    refuse_unless(options.certain > 0.0 && options.certain <= 1.0, "certain", options.certain, "above 0, to 1");
}

} // namespace bankwright::internal::tracing
