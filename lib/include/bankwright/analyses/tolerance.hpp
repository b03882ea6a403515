// How far do the answers spread when nothing is quite what the file says, how bad can it get, and what matters most?
//
// Every value is drawn evenly from its tolerance, apart from all others: by a million at once through the batch solver.
// An answer rises or falls with each value over its whole tolerance while the others stand still, so that the worst
// case is a corner. It is sought from the one to which every value's own swing points, one value after another to its
// other end as long as that leads farther; no draw lies beyond it.
#pragma once

#include "bankwright/analyses/spreads.hpp"
#include "bankwright/bank/bank.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/network/moment.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace bankwright {

struct ToleranceOptions {
    Moment moment;
    Spreads spreads;
    std::size_t samples = 100'000;
    std::uint64_t seed = 1;
    int threads = 1; // the answer does not depend on it
};

// Something that varies in the circuit.
struct Varied {
    std::string part;
    std::string key;                // "resistance", "emf", "positive contact" or "negative contact"
    double least = 0.0, most = 0.0; // [ohm] or [V]
};

// What one varied value does to one answer.
struct Influence {
    std::string part;
    std::string key;
    double swing = 0.0; // of the answer, from the value's least to its most
    double share = 0.0; // of the sum of all swings' squares: about its share of the variance
};

// One answer: the voltage at a motor or load, or the current of a battery. A motor or load of which a terminal has no
// path to the reference has no voltage: every number of its answer is not a number, and nothing influences it.
struct Spreading {
    std::string part;
    std::string unit;       // "V" or "A"
    double as_stated = 0.0; // with every value as the file says
    double mean = 0.0, deviation = 0.0;
    double least = 0.0, most = 0.0;             // of the samples
    double worst_least = 0.0, worst_most = 0.0; // at the corners
    std::vector<Influence> influences;          // the largest first
};

struct ToleranceResult {
    bool solved = false; // false: as stated the bank has no operating point, and nothing else is filled in
    std::size_t samples = 0;
    std::size_t unanswered = 0; // samples that ask for more power than there is
    std::vector<Varied> varied;
    std::vector<Spreading> answers; // motors and loads, then batteries, in the bank's order
};

inline std::size_t part_count(Bank const& bank) {
    std::size_t count = 0;
    for_each_part(bank, [&](PartKind, auto const&) { ++count; });
    return count;
}

// As many samples as is usual, 100,000; fewer where one costs much: about half a second's work. What draws other than
// its nameplate current, or what charges, costs the cube of how many there are.
std::size_t usual_samples(Bank const& bank);

// Why a bank is too large to vary, in words; none if it is not.
std::optional<std::string> too_many_to_vary(Bank const& bank);

// Throws std::invalid_argument for an option out of its range (network/option_limits.hpp).
void refuse_unfit(Spreads const& spreads);
void refuse_unfit(ToleranceOptions const& options);

// Throws std::invalid_argument as build() does, for unfit options, and for a bank that is too_many_to_vary().
ToleranceResult tolerance(Bank const& bank, ToleranceOptions const& options = {});

// The bank as draw `number` of a seed makes it, for questions that need a whole bank: capacities vary too, and what the
// file leaves open about them, Peukert's exponent over its usual range and wear (analyses/spreads.hpp).
Bank sample_bank(Bank const& bank, Spreads const& spreads, std::uint64_t seed, std::uint64_t number);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/tolerance_inl.hpp"
#endif
