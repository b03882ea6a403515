// Every fault of a bank with its chance before anything was read, and what the meter would then show.
#pragma once

#include "bankwright/analyses/trace/expected_readings.hpp"
#include "bankwright/analyses/trace/faults.hpp"
#include "bankwright/analyses/trace/updated_readings.hpp"
#include "bankwright/bank/bank.hpp"
#include "bankwright/bank/reading_sheet.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/network/moment.hpp"

#include <cstddef>
#include <list>
#include <map>
#include <optional>
#include <unordered_map>
#include <utility>
#include <vector>

namespace bankwright {

// Faults at fixed values: one, several at once, or none.
struct Suspect {
    std::vector<std::pair<std::size_t, double>> faults; // which change, at which value
    std::size_t hypothesis = 0;                         // suspects that differ in values only are one
    double weight = 0.0;                                // prior, not normalized
};

class Suspects {
public:
    Suspects(Bank const& bank, PartSpread const& spread, std::optional<Since> since);

    std::vector<Suspect> const& all() const { return suspects_; }
    std::vector<FaultChange> const& changes() const { return changes_; }
    std::size_t singles() const { return singles_; } // and as described: they come first, pairs after them
    std::size_t elements() const;                    // of the wiring, in all parts
    Bank const& bank() const { return bank_; }
    Network const& network() const { return network_; } // at rest
    Places const& places() const { return places_; }

    // What the bank reads with that suspect in it. Solved once, and held until it is forgotten.
    ExpectedReadings& expected(std::size_t suspect, Moment const& moment);

    // What the `asked` would read with that suspect in it: by an update of the wiring as described where that will do,
    // else solved, and kept while there is room.
    std::vector<ExpectedReading> readings(std::size_t suspect, Moment const& moment,
                                          std::vector<AskedReading> const& asked);

    // Solves what readings at that moment will want of it, where no update will do and there is room.
    void prepare(std::size_t suspect, Moment const& moment);

    // Adds two faults at once, at every pair of their values; nothing if it is there, or if both are of one element.
    void add_pair(std::size_t one, std::size_t other);
    void forget_pairs(); // and what was solved of them
    // Leaves what was solved for these moments, while it is not too much, and at rest.
    void forget_but(std::vector<Moment> const& moments);
    // In words; none for as described. One fault alone with the values that it lies between.
    std::vector<Fault> describe(Suspect const& suspect, double low, double high) const;

private:
    struct AtMoment {
        Moment moment;
        UpdatedReadings updated;                                    // of the wiring as described
        std::unordered_map<std::size_t, ExpectedReadings> expected; // by suspect
    };
    AtMoment& at(Moment const& moment);
    ExpectedReadings const& glance(std::size_t suspect, AtMoment& moment, std::optional<ExpectedReadings>& other);
    ExpectedReadings solve(std::size_t suspect, FaultyWiring wiring) const;
    double chance_of(FaultChange const& change, std::optional<Since> since) const;
    std::vector<PartDoubt> doubts_of(Suspect const& suspect, FaultyWiring const& drawn) const;

    Bank bank_;
    Network network_;
    Places places_;
    PartSpread spread_;
    std::vector<FaultChange> changes_;
    std::vector<Suspect> suspects_;
    std::size_t hypotheses_ = 0;
    std::size_t singles_ = 0, single_hypotheses_ = 0; // without pairs
    std::map<std::pair<std::size_t, std::size_t>, std::size_t> pairs_;
    std::list<AtMoment> moments_; // what is held by reference does not move
    std::size_t kept_bytes_ = 0;
};

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/trace/suspects_inl.hpp"
#endif
