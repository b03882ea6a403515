// What source is the bank, as seen from two of its terminals: what voltage stands there, how far does it give way, what
// flows into a short?
//
// The three numbers belong together, R = V / I_short (Thevenin's and Norton's theorems). Batteries are as in every
// analysis: an open-circuit voltage behind an internal resistance, at one moment.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/network/moment.hpp"
#include "bankwright/solver/small_signal.hpp"
#include "bankwright/solver/solution.hpp"
#include "bankwright/units/quantities.hpp"

#include <optional>
#include <string>

namespace bankwright {

// Everything else that is connected belongs to the source too: by default nothing but batteries and copper. Loads that
// run, and chargers, either give way along their own laws or hold their currents; with them the resistance is that for
// small currents.
struct SeenFromOptions {
    Moment moment = bank_alone();
    solver::LoadsDo loads = solver::LoadsDo::follow;
};

struct SeenFrom {
    Voltage open;          // of `plus` against `minus`, nothing more drawn there
    Resistance resistance; // what it falls by, for each ampere drawn there
    std::optional<Current>
        short_current; // open / resistance; none where the two are one point. Exact with loads at rest
};

struct SeenFromResult {
    solver::Status status = solver::Status::bad_circuit;
    std::optional<SeenFrom> source; // none unless solved, or where no closed path joins the two terminals
};

// Throws std::out_of_range for a terminal that the bank does not have, std::invalid_argument where build() does.
SeenFromResult seen_from(Bank const& bank, std::string const& plus, std::string const& minus,
                         SeenFromOptions const& options = {});

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/seen_from_inl.hpp"
#endif
