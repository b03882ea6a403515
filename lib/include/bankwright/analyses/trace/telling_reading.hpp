// Which voltage, or which current, would tell most between the hypotheses that are left?
#pragma once

#include "bankwright/analyses/trace/voltage_outlook.hpp"
#include "bankwright/analyses/trace_options.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/network/moment.hpp"

#include <cstddef>
#include <functional>
#include <optional>
#include <vector>

namespace bankwright {

// The hypotheses at one moment at which a reading could be taken.
struct View {
    Moment moment;
    std::vector<VoltageOutlooks> outlooks;             // by hypothesis
    std::vector<std::vector<CurrentOutlook>> currents; // by hypothesis, then as in Clampable; empty without a clamp
};

// Is there a reading that tells the two hypotheses apart?
bool can_tell(std::vector<View> const& views, std::size_t one, std::size_t other, TraceOptions const& options);

struct TellingReading {
    std::size_t view = 0;
    int red = 0; // terminal
    int black = 0;
    std::optional<std::size_t> current; // of a clampable part, instead
    bool is_far = false;                // red and black are in two places
    double bits = 0.0;
};

// A hypothesis to be told from the others, with the chance of all that is like it.
struct Candidate {
    std::size_t number = 0; // in the views
    double chance = 0.0;
};

// Where the leads and a clamp can be put.
struct Reach {
    std::vector<int> const* place_of = nullptr;          // by terminal
    std::size_t clampable = 0;                           // parts around which a clamp goes
    std::function<bool(TellingReading const&)> is_taken; // it was read already
};

// The reading with the most information about which hypothesis is true, both leads in one place; in two only
// where no one place tells much; none if none gives any worth a look.
// The likeliest hypothesis comes first; chances need not sum to 1.
std::optional<TellingReading> most_telling(std::vector<View> const& views, std::vector<Candidate> const& hypotheses,
                                           Reach const& reach, TraceOptions const& options);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/trace/telling_reading_inl.hpp"
#endif
