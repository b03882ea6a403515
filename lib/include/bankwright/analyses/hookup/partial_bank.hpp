// What would a meter read while only some of the bank's conductors are landed and its devices closed? Every load is off
// and no charger gives, so nothing but batteries and copper is left: a linear network.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/graph/as_index.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/network/network.hpp"
#include "bankwright/solver/circuit.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace bankwright {

// What is landed, fitted, closed or mated in one go: a conductor, a fuse, a switch, a breaker, or both poles of a plug.
struct Connection {
    struct Path {
        int from = 0;
        int to = 0;
        double ohms = 0.0; // [ohm] 0: ideal
    };
    std::string part;
    PartKind kind = PartKind::cable;
    std::size_t index = 0; // in its vector of the Bank
    std::vector<Path> paths;
};

// By connection: is it made?
using Made = std::vector<char>;

// What differs from the bank as it is drawn. Nodes and indices are those of the PartialBank; -1: nothing.
struct Deviation {
    int battery = -1;    // it gives `emf` instead of its own
    double emf = 0.0;    // [V]
    int connection = -1; // this end of it is landed elsewhere
    bool from_end = false;
    int onto = -1;
    int plus = -1, minus = -1;    // all that is landed on the one is landed on the other, and the other way around
    int meant = -1, instead = -1; // all that is landed on the one is landed on the other
    int absent = -1;              // this connection is not made, or does not conduct
    int extra = -1, other = -1;   // a conductor that nobody drew joins the two
    std::vector<std::pair<int, int>> leaks; // loads that conduct although they are off: a path through each
};

struct Potentials {
    std::vector<double> volts; // [V] by node, within its island
    std::vector<int> island;   // by node
    std::vector<double> battery_amps;
    std::vector<std::vector<double>> path_amps; // [A] by connection and path; 0 where it is not made

    // [V] None where the two share no path: floating.
    std::optional<double> between(int red, int black) const {
        auto const r = as_index(red), b = as_index(black);
        if (island[r] != island[b]) return std::nullopt;
        return volts[r] - volts[b];
    }
};

// How a reading answers to what lies behind it.
struct Sensitivity {
    std::vector<double> per_volt; // by battery: volts of the reading per volt of its emf
    double ohms = 0.0;            // [ohm] seen into the two points
};

class PartialBank {
public:
    explicit PartialBank(Bank const& bank);

    std::vector<std::string> const& terminals() const { return network_.terminals; }
    int node(std::string const& terminal) const { return node_of(network_, terminal); }
    // What the bank as described has closed, in the author's order.
    std::vector<Connection> const& connections() const { return connections_; }
    std::size_t batteries() const { return emf_.size(); }
    double emf(std::size_t battery) const { return emf_[battery]; } // [V]
    int plus(std::size_t battery) const { return plus_[battery]; }
    int minus(std::size_t battery) const { return minus_[battery]; }
    bool is_post(int node) const { return post_[as_index(node)] != 0; }

    Potentials read(Made const& made, Deviation const& deviation = {}) const;
    // Where an end lies that belongs on this node.
    static int landed(int node, Deviation const& deviation);
    // Of a reading between two points that share a path.
    Sensitivity sense(Made const& made, int red, int black) const;
    // By node: points that a path through batteries and connections joins have the same number.
    std::vector<int> islands(Made const& made) const;
    // The same without a path through any battery: what an ohmmeter finds joined.
    std::vector<int> copper(Made const& made, Deviation const& deviation,
                            std::vector<std::pair<int, int>> const& clips) const;

    // The resistance of a load in standby. Any value will do, because a meter takes next to no current.
    static constexpr double leak = 1e3; // [ohm]

private:
    struct Placed {
        solver::Circuit circuit;
        std::vector<std::vector<int>> element; // by connection and path: its branch, or -1 - its join
    };
    Placed place(Made const& made, Deviation const& deviation) const;

    Network network_;
    std::vector<double> emf_, ohms_; // by battery
    std::vector<int> plus_, minus_;
    std::vector<char> post_; // by node
    std::vector<Connection> connections_;
    std::vector<solver::Join> always_;  // a charger's common negative, a device on its post
    std::vector<solver::Branch> fixed_; // shunts, that nobody makes by hand
};

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/hookup/partial_bank_inl.hpp"
#endif
