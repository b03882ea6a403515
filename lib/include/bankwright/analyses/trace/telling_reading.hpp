// Which voltage would tell most between the hypotheses that are left?
#pragma once

#include "bankwright/analyses/trace/voltage_outlook.hpp"
#include "bankwright/analyses/trace_options.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/network/moment.hpp"

#include <cstddef>
#include <optional>
#include <vector>

namespace bankwright {

// The hypotheses at one moment at which a reading could be taken.
struct View {
    Moment moment;
    std::vector<VoltageOutlooks> outlooks; // by hypothesis
};

// Is there a reading that tells the two hypotheses apart?
bool can_tell(std::vector<View> const& views, std::size_t one, std::size_t other, TraceOptions const& options);

struct TellingReading {
    std::size_t view = 0;
    int red = 0; // terminal
    int black = 0;
    double bits = 0.0;
};

// The reading with the most information about which group of hypotheses is true; none if none gives any worth a look.
// Chances by hypothesis, for as many of the first as are to be told apart; they need not sum to 1.
std::optional<TellingReading> most_telling(std::vector<View> const& views, std::vector<double> const& chances,
                                           std::vector<std::size_t> const& groups, TraceOptions const& options);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/trace/telling_reading_inl.hpp"
#endif
