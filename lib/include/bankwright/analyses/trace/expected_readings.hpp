// What would a meter show on a wiring, and how surely? Voltages and currents at one moment, with the spread that comes
// from what is never known exactly: each battery's charge, each resistance.
#pragma once

#include "bankwright/analyses/trace/faults.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/solver/linear_network.hpp"

#include <cstddef>
#include <optional>
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

// An element that is less well known than PartSpread says: one standard deviation each.
struct PartDoubt {
    std::size_t element = 0;
    double volts = 0.0; // [V] of its emf
    double ohms = 0.0;  // [ohm] of its resistance
};

// [V] the emf that stands for one standard deviation of all that is not known of an element, a branch that carries so
// much; 0 where it is next to nothing. A resistance that is off by dR acts as an emf of -I dR in its place.
double emf_of_doubt(std::size_t element, solver::Branch const& branch, double amperes, PartSpread const& spread,
                    std::vector<PartDoubt> const& doubts);

class ExpectedReadings {
public:
    ExpectedReadings(FaultyWiring const& wiring, PartSpread const& spread, std::vector<PartDoubt> const& doubts = {});

    bool solved() const { return solved_; }
    double largest_battery_amps() const;    // [A] either way; 0 if it is not solved
    double volts(int red, int black) const; // [V]; between islands 0, as a meter's own resistance makes it
    double volts_at(int node) const { return volts_[static_cast<std::size_t>(node)]; } // [V] of its island
    ExpectedReading volts_reading(int red, int black) const;
    // Elements of which something is not known that moves any node, and what that does to each node [V], against its
    // island's own zero: a row by merged node, in the order of the elements. One solve a node, the first time.
    std::vector<std::size_t> const& unsure_elements() const { return unsure_elements_; }
    std::vector<double> const& node_sensitivities();
    std::size_t merged(int node) const { return static_cast<std::size_t>(merged_[static_cast<std::size_t>(node)]); }
    int island(int node) const { return island_[static_cast<std::size_t>(node)]; }
    bool together(int a, int b) const {
        return island_[static_cast<std::size_t>(a)] == island_[static_cast<std::size_t>(b)];
    }
    ExpectedReading amps_reading(std::size_t element) const;
    std::size_t bytes() const; // that it holds, nearly

private:
    struct Unsure { // a current of one standard deviation, by what is not known of an element
        std::size_t element;
        int from, to; // nodes
        double amps;  // [A]
    };
    void be_unsure(Unsure const& one);
    // By element: how far one standard deviation moves what is measured as the voltages `response` [V] per ampere that
    // it would take in there (reciprocity: one solve a reading, whatever the number of elements).
    std::vector<double> moved(std::vector<double> const& response) const;

    bool solved_ = false;
    std::vector<Element> elements_;
    std::vector<double> volts_; // [V] by node
    std::vector<int> island_;   // by node
    std::vector<int> merged_;   // by node: which one joins make of it
    std::vector<Unsure> unsure_;
    std::vector<std::size_t> unsure_elements_;
    std::vector<double> node_sensitivities_;                  // empty until asked for
    std::optional<solver::LinearNetwork> network_;            // loads as conductances
    std::vector<double> branch_amps_, join_amps_, load_amps_; // [A]
    std::vector<solver::Branch> branches_;
};

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/trace/expected_readings_inl.hpp"
#endif
