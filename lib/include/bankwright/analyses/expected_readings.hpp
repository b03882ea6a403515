// What would a meter show on a wiring, and how surely? Voltages and currents at one moment, with the spread that comes
// from what is never known exactly: each battery's charge, each resistance.
#pragma once

#include "bankwright/analyses/faults.hpp"
#include "bankwright/linkage.hpp"

#include <algorithm>
#include <cstddef>
#include <vector>

namespace bankwright {

// One standard deviation each, as shares.
struct PartSpread {
    double emf = 0.008; // of a battery's open-circuit voltage: 0.1 V of 12.7 V, some 8 % of its charge [from memory]
    double resistance = 0.2; // of every resistance
};

// A reading as a wiring would give it, to first order: mean + sum of sensitivities x (independent, standard normal).
struct ExpectedReading {
    double mean = 0.0;                 // [V] or [A]
    std::vector<double> sensitivities; // by source of spread: FaultyWiring::elements, in order
    double own_spread = 0.0;           // one standard deviation of what is this reading's own
};

class ExpectedReadings {
public:
    // An element that is less well known than PartSpread says: one standard deviation each.
    struct Doubt {
        std::size_t element = 0;
        double volts = 0.0; // [V] of its emf
        double ohms = 0.0;  // [ohm] of its resistance
    };
    ExpectedReadings(FaultyWiring const& wiring, PartSpread const& spread, std::vector<Doubt> const& doubts = {});

    bool solved() const { return solved_; }
    double largest_battery_amps() const;    // [A] either way; 0 if it is not solved
    double volts(int red, int black) const; // [V]; between islands 0, as a meter's own resistance makes it
    ExpectedReading volts_reading(int red, int black) const;
    std::vector<double> node_sensitivities(int node) const; // [V] against its island's own zero, by element
    bool together(int a, int b) const {
        return island_[static_cast<std::size_t>(a)] == island_[static_cast<std::size_t>(b)];
    }
    bool moves(std::size_t element) const { // any node, by what is not known of that element
        return std::find(columns_.begin(), columns_.end(), element) != columns_.end();
    }
    ExpectedReading amps_reading(std::size_t element) const;
    std::size_t bytes() const; // that it holds, nearly

private:
    double response(std::size_t column, int node) const {
        return responses_[column * nodes_ + static_cast<std::size_t>(node)];
    }

    bool solved_ = false;
    std::size_t nodes_ = 0;
    std::vector<Element> elements_;
    std::vector<double> volts_;        // [V] by node
    std::vector<int> island_;          // by node
    std::vector<std::size_t> columns_; // the elements that move any node
    std::vector<double> responses_;    // [V] column by column: by node, for one standard deviation
    std::vector<double> branch_amps_, join_amps_, load_amps_; // [A]
    std::vector<double> own_volts_; // [V] by column: the emf that one standard deviation stands for
    std::vector<solver::Branch> branches_;
    std::vector<int> column_branch_; // by column
};

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/expected_readings_inl.hpp"
#endif
