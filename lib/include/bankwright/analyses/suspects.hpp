// Every fault of a bank with its chance before anything was read, and what the meter would then show.
#pragma once

#include "bankwright/analyses/expected_readings.hpp"
#include "bankwright/analyses/faults.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/network/moment.hpp"

#include <cstddef>
#include <map>
#include <optional>
#include <utility>
#include <vector>

namespace bankwright {

// Faults at fixed values: one, several at once, or none.
struct Suspect {
    std::vector<std::pair<std::size_t, double>> faults; // which change, at which value
    std::size_t hypothesis = 0;                         // suspects that differ in values only are one
    double weight = 0.0;                                // prior, not normalised
};

class Suspects {
public:
    Suspects(Bank const& bank, PartSpread const& spread);

    std::vector<Suspect> const& all() const { return suspects_; }
    std::vector<FaultChange> const& changes() const { return changes_; }
    Bank const& bank() const { return bank_; }
    Network const& network() const { return network_; } // at rest

    // What the bank reads with that suspect in it. Solved once, and held for good.
    ExpectedReadings const& expected(std::size_t suspect, Moment const& moment);
    // The same until the next call of either: kept while there is room, else solved again.
    ExpectedReadings const& glance(std::size_t suspect, Moment const& moment);

    // Adds two faults at once, at every pair of their values; nothing if it is there, or if both are of one element.
    void add_pair(std::size_t one, std::size_t other);
    // In words; none for as drawn. One fault alone with the values that it lies between.
    std::vector<Fault> describe(Suspect const& suspect, double low, double high) const;

private:
    std::size_t index_of(Moment const& moment);
    ExpectedReadings solve(std::size_t suspect, std::size_t moment) const;
    std::vector<ExpectedReadings::Doubt> doubts_of(Suspect const& suspect, FaultyWiring const& wiring) const;

    Bank bank_;
    Network network_;
    PartSpread spread_;
    std::vector<FaultChange> changes_;
    std::vector<Suspect> suspects_;
    std::size_t hypotheses_ = 0;
    std::map<std::pair<std::size_t, std::size_t>, std::size_t> pairs_;
    std::vector<std::pair<Moment, FaultyWiring>> moments_;
    std::vector<std::vector<std::optional<ExpectedReadings>>> expected_; // by moment, by suspect
    std::optional<ExpectedReadings> glance_;
    std::pair<std::size_t, std::size_t> glanced_; // moment and suspect of it
    std::size_t kept_bytes_ = 0;
};

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/suspects_inl.hpp"
#endif
