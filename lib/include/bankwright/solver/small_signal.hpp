// How does a circuit answer a small change at its operating point? Its loads follow along their own laws, or hold.
//
// Method. The network is linear as it is. Each load that depends on its voltage becomes its tangent dI = s dV at its
// port, where the network is dV = dV0 - Z dI (ports.hpp): a small system gives the loads' answer, for falling laws
// (constant power, s < 0) as for rising ones. A limited source that holds its voltage has dV = 0 instead. At a kink,
// where such a source goes from one state to the next, there is no one tangent; the answer is that of the state it is
// in.
#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/solver/circuit.hpp"
#include "bankwright/solver/linear_network.hpp"
#include "bankwright/solver/solution.hpp"
#include "bankwright/solver/solve.hpp"
#include "bankwright/solver/topology.hpp"

#include <memory>
#include <vector>

namespace bankwright::solver {

struct NodePair {
    int plus = 0;
    int minus = 0;
};

enum class LoadsDo {
    follow, // along the tangents of their laws
    hold,   // their currents, whatever the voltage
};

// The change of everything for one unit of what was done.
struct SmallAnswer {
    std::vector<double> load_volts;  // by load: of its plus end against its minus end; 0 for one that is not fed
    std::vector<double> load_amps;   // by load
    std::vector<double> branch_amps; // by branch
    std::vector<double> pair_volts;  // by pair
};

class SmallSignal {
public:
    // `pairs`: where it will be asked. Nothing but the operating point's status is good unless that is solved.
    SmallSignal(Circuit circuit, std::vector<NodePair> const& pairs, LoadsDo loads, SolveOptions const& options);

    Solution const& operating_point() const { return point_; }
    Feed feed(std::size_t pair) const {
        return topology_.load_feed[loads_ + pair];
    }                                     // port: a closed path joins its nodes
    double volts(std::size_t load) const; // [V] of its plus end against its minus end at the operating point
    int merged(int node) const { return topology_.merged[as_index(node)]; } // what joins make of it

    SmallAnswer draw(std::size_t pair) const; // 1 A more from its plus through the outside to its minus node
    SmallAnswer push(int branch) const;       // 1 V more of emf in it

private:
    struct Tangent {
        std::size_t load;
        double siemens; // s [S]
        bool holds;     // its voltage
    };
    void linearize();
    SmallAnswer answer(Circuit const& changed, std::vector<double> line_amps) const;
    std::size_t line(std::size_t load) const { return as_index(topology_.load_line[load]); }

    Circuit quiet_;     // the pairs as loads of no current after the loads; in the end without any emf
    std::size_t loads_; // of the circuit itself
    Topology topology_;
    Solution point_;
    std::unique_ptr<LinearNetwork> network_;
    std::vector<Tangent> tangents_;
    std::vector<double> ohms_; // between the tangents' ports, row by row
};

} // namespace bankwright::solver

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/solver/small_signal_inl.hpp"
#endif
