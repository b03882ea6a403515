// The same banks solved by us and by general-purpose libraries, all from the same rows of parameters.
#pragma once

#include "bankwright/solver/batch.hpp"

#include <cstddef>
#include <memory>
#include <string_view>
#include <vector>

namespace bench {

using bankwright::solver::BatchPlan;

// One way to get the volts of all nodes (count x nodes) of many banks from their parameters (count x parameters).
// What depends on the wiring only is done when it is made.
class Contender {
public:
    virtual ~Contender() = default;
    virtual void solve(double const* parameters, std::size_t count, double* volts) = 0;
};

// Nodes other than the reference numbered from 0, the reference -1; the pattern has neither joins nor islands.
std::vector<int> rows_by_node(BatchPlan const& plan);

// Null for a name that is not known or a library that was not found when this was built.
std::unique_ptr<Contender> make_contender(BatchPlan const& plan, std::string_view name);
std::unique_ptr<Contender> make_ours(BatchPlan const& plan,
                                     std::string_view name); // ours, ours-portable, ours-avx2 ...
std::unique_ptr<Contender> make_eigen(BatchPlan const& plan, std::string_view name); // eigen-dense, eigen-sparse
std::unique_ptr<Contender> make_klu(BatchPlan const& plan, std::string_view name);   // klu-refactor

} // namespace bench
