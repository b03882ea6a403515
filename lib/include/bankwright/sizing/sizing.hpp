// The smallest conductors, breakers and number of strings with which the bank passes every rule, and why no smaller
// ones.
//
// The rules themselves decide, on the changed bank: nothing of what they know is known here a second time. Conductors
// that the file gives one size, and breakers or fuses that it gives one rating, stay alike.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/findings/finding.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/sizing/standard_sizes.hpp"
#include "bankwright/units/quantities.hpp"
#include "bankwright/units/temperature.hpp"

#include <optional>
#include <string>
#include <vector>

namespace bankwright {

struct SizingOptions {
    std::optional<Duration> runtime;    // wanted, instead of the bank's own
    std::optional<Temperature> ambient; // instead of the bank's own
    SizeSystem system = SizeSystem::awg;
    bool keep_strings = false; // leave their number as described
    int most_strings = 8;
};

// Conductors of one size, or breakers or fuses of one rating.
struct SizedGroup {
    std::vector<std::string> parts;
    std::optional<WireSize> size;  // of conductors
    std::optional<Current> rating; // of devices
    std::string as_written;        // "6 AWG", "60 A"; empty where the file states none
    std::string chosen;            // likewise
    std::string smaller;           // the next smaller; empty if there is none
    Findings refused;              // what the rules have against that
};

struct SizedStrings {
    int as_written = 0;
    int chosen = 0;
    Findings refused; // what the rules have against one string less
};

struct SizingResult {
    Bank bank;                           // as sized
    std::optional<SizedStrings> strings; // none where their number is not to be varied
    std::vector<SizedGroup> groups;
    Findings left; // errors and warnings of the sizing rules that no standard size cures
};

// Errors and warnings of the families that sizes are held against: solve, protection, conductor, connection, sharing
// and load; of the middle three also with every charger plugged in.
Findings against_sizes(Bank const& bank);

// A bank with errors of other families has to be corrected first: its sizes mean nothing. Throws std::invalid_argument
// for an option out of its range (network/option_limits.hpp).
SizingResult sizing(Bank const& bank, SizingOptions const& options = {});

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/sizing/sizing_inl.hpp"
#endif
