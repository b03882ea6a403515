// Many banks of one wiring, their numbers streamed through its plan (batch_plan.hpp). Memory does not grow with their
// count: blocks of banks are filled, solved and read in turn.
#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/solver/batch_plan.hpp"
#include "bankwright/solver/lanes.hpp"
#include "bankwright/solver/lanes/port_lanes.hpp"

#include <cstddef>
#include <memory>
#include <vector>

namespace bankwright::solver {

// One block: `lanes` banks side by side. Fill every parameter of every lane, solve, read.
class Block {
public:
    // Keeps a reference to the plan.
    explicit Block(BatchPlan const& plan, InstructionSet set = widest_here());

    double* parameter(int number) { return rows_.data() + plan_->program.first_parameter + number * lanes; }
    double* resistance(int branch) { return parameter(plan_->layout.resistance[as_index(branch)]); }

    // A resistance must lie within 1e-75 to 1e75 ohm. A bank that has no answer, or a parameter that is not finite,
    // gets NaN; it does not touch its neighbors. The numbers of a load must be such as its law allows (validate.hpp).
    // Only the first `used` lanes need hold a bank.
    void solve(int used = lanes);

    // [V] of the lanes at a wanted node, as in Solution::volts.
    double const* volts(int node) const { return rows_.data() + volts_[as_index(node)]; }

    // [A] of the lanes in a branch whose two nodes are wanted; `amps` holds `lanes` doubles.
    void branch_amps(int branch, double* amps) const;

    BatchPlan const& plan() const { return *plan_; }

private:
    void solve_load(int used);
    void solve_ports(int used);
    enum class Sources { as_given, at_rest };
    void feed(Sources sources);
    double* port_amps(std::size_t port);
    double across(std::size_t port, int lane) const;
    void shift_to_reference();

    BatchPlan const* plan_;
    InstructionSet set_;
    LaneRows rows_;
    std::vector<int> volts_;        // by node: offset of its row
    std::vector<int> shifted_;      // rows that count from the load's minus end at first
    int reference_ = 0;             // the row of the node that is 0 V in the end
    std::unique_ptr<Block> linear_; // with LoadMethod::ports: the same with given currents in the loads' places
    std::unique_ptr<PortLanes> ports_;
};

struct BatchOptions {
    InstructionSet set = widest_here();
    int threads = 1; // the answers do not depend on it
};

// Rows as NumPy lays them out: `parameters` is count x plan.parameters(), `volts` count x plan.wanted.size().
// Throws std::invalid_argument if a resistance is not within 1e-75 to 1e75 ohm, a value is not finite, or a load's
// number is outside its law (validate.hpp): a negative power, a duty above 1.
void solve_rows(BatchPlan const& plan, double const* parameters, std::size_t count, double* volts,
                BatchOptions const& options = {});

} // namespace bankwright::solver

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/solver/batch_inl.hpp"
#endif
