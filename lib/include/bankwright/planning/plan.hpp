// From a wish to a bank: which batteries, how many strings, which breaker, which copper, and why no less?
//
// Batteries of the part list are tried in ever more strings until the bank lasts down to its reserve; devices and
// copper are then raised until no rule finds anything. The rules decide: nothing of what they know is known here again.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/findings/finding.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/planning/part_stock.hpp"
#include "bankwright/planning/plan_choice.hpp"
#include "bankwright/planning/wish.hpp"
#include "bankwright/sizing/cut_list.hpp"

#include <optional>
#include <string>
#include <vector>

namespace bankwright {

struct PlannedBank {
    Bank bank;
    std::string arrangement; // "3S2P"
    std::string model;       // of the batteries, in the part list; empty where the wish describes them itself
    std::string battery;     // "12 V AGM, 100 Ah"
    int series = 1;
    int strings = 1;
    Duration to_reserve{}; // at the throttle that is wished for
    StateOfCharge reserve = StateOfCharge::of(0.0);
    Current each{}; // of one battery, at full throttle
    CutList cuts;   // with mass and price
    std::vector<PlanChoice> choices;
    Findings notes; // what `check` still has to say: notes on what a part list leaves open, nothing more
};

struct PlanOptions {
    int alternatives = 6; // banks at most, the proposed one included
};

struct PlanResult {
    std::vector<PlannedBank> banks;    // the proposed one first; empty: no bank does
    std::vector<WishProblem> problems; // why not; empty where there is one
};

// Proposed is the bank of the fewest strings, then the lightest. Throws std::invalid_argument for fewer than one
// alternative.
PlanResult plan(Wish const& wish, PartStock const& stock, PlanOptions const& options = {});

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/planning/plan_inl.hpp"
#endif
