// Which currents do loads draw behind V = V0 - Z I, in many banks at once?
//
// Method. Newton's method in all lanes together until the last of them stands still, where it is known to reach the
// answer that port_loads.hpp asks for: constant-power loads alone behind ports that pull each other down, where it
// climbs from the open circuit and never past the smallest currents; square-law loads alone, which have one answer. A
// lane that has not settled by then, and every other mixture of laws, goes to port_loads.hpp by itself.
#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/solver/circuit.hpp"
#include "bankwright/solver/lanes.hpp"

#include <vector>

namespace bankwright::solver {

class PortLanes {
public:
    explicit PortLanes(std::size_t ports);

    // Rows of `lanes` doubles, to be filled: [V], [ohm] of the voltage at `row` per ampere at `column`.
    double* open_volts(std::size_t port) { return rows_.row(static_cast<int>(port)); }
    double* ohms(std::size_t row, std::size_t column) {
        return rows_.row(static_cast<int>(ports_ * (2 + row) + column));
    }
    // The law's kind; its numbers stand in rows one behind the other.
    void set_law(std::size_t port, Law const& kind, double const* numbers) { laws_[port] = {kind, numbers}; }

    int find_currents(int used); // how many lanes settled together; the others were settled alone, or are lost

    double const* amps(std::size_t port) const { return rows_.row(static_cast<int>(ports_ + port)); } // [A]
    bool is_lost(int lane) const { return lost_[as_index(lane)] != 0; }                               // no answer

private:
    struct LaneLaw {
        Law kind;
        double const* numbers = nullptr;
    };
    double* amps_of(std::size_t port) { return rows_.row(static_cast<int>(ports_ + port)); }
    template <class Kind>
    bool all_are() const;
    void together(int used, std::vector<char>& settled);
    void alone(int lane);

    std::size_t ports_;
    std::vector<LaneLaw> laws_;
    LaneRows rows_;   // open volts, amps, then ohms row by row
    LaneRows matrix_; // of one step, row by row, its right side last
    std::vector<char> lost_;
};

} // namespace bankwright::solver

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/solver/lanes/port_lanes_inl.hpp"
#endif
