// A step through time of what an explicit rule can only creep along with: values that settle far faster than the others
// move, as a small battery's charge beside a large one's. Linearly implicit (numeric/rodas.hpp).
//
// What flows on the way is carried along by the same rule: its slopes depend on the values, nothing on it. So what
// balances between slopes at every moment balances over the step, but for rounding.
#pragma once

#include "bankwright/linkage.hpp"

#include <cstddef>
#include <functional>
#include <memory>

namespace bankwright::solver {

class StiffStep {
public:
    // Slopes [1/s] of `values` numbers, and of `flows` others behind them, at these values. False: there are none.
    using SlopesAt = std::function<bool(double const* values, double* slopes)>;
    // How all of these slopes follow the values: column after column, one a value.
    using DerivativeAt = std::function<bool(double const* values, double* columns)>;

    StiffStep(std::size_t values, std::size_t flows, SlopesAt slopes_at, DerivativeAt derivative_at);
    ~StiffStep();
    StiffStep(StiffStep&&) noexcept;

    // Values as a step begins. False: there are no slopes at them, or nearby.
    bool start(double const* values);
    // Of so many seconds, any number of times from one start. False: on the way there are no slopes.
    bool go(double h);

    double const* end() const; // values at the end, then what the flows have gained
    double error() const;      // of the worst value

private:
    struct Parts;
    std::unique_ptr<Parts> parts_;
};

} // namespace bankwright::solver

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/solver/stiff_step_inl.hpp"
#endif
