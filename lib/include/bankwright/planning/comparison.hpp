// What does one layout give that another does not? The figures of one bank that people weigh against those of another.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/findings/finding.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/rules/check.hpp"
#include "bankwright/sizing/cut_list.hpp"
#include "bankwright/units/quantities.hpp"
#include "bankwright/units/wire_gauge.hpp"

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace bankwright {

struct CopperOfSize {
    WireSize size;
    Length length{}; // of all conductors of that size, without slack
};

struct BankFigures {
    std::string name; // of its file, or its own
    std::optional<std::string> arrangement;
    Findings findings;
    std::vector<std::pair<std::string, Voltage>> loads; // by motor and load that is joined to the bank, as described
    std::string hardest;                                // the battery that gives most
    std::optional<Current> hardest_current;             // none where no operating point is sound
    std::optional<double> share;                        // of that battery, over the mean of all
    std::optional<Duration> runtime;                    // until a battery is done; none where nothing can be run down
    std::optional<Duration> to_reserve;
    std::optional<Current> largest_short;
    std::vector<CopperOfSize> copper; // from the thickest
    CutList cuts;
};

// Of a bank as check() sees it. A bank whose wiring is not right has findings and copper, and no currents.
BankFigures figures_of(std::string name, Bank const& bank, CheckResult const& checked);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/planning/comparison_inl.hpp"
#endif
