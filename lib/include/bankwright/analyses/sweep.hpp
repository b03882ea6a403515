// What do many banks read that are wired alike and differ in some values? One plan of elimination for all of them,
// sixteen banks side by side.
//
// A resistance, an emf, a load's current or power goes straight into the solver; any other key works through its part's
// physics, and its banks are worked out one by one.
#pragma once

#include "bankwright/analyses/sweep/swept_key.hpp"
#include "bankwright/bank/bank.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/network/moment.hpp"

#include <atomic>
#include <cstddef>
#include <memory>
#include <span>
#include <vector>

namespace bankwright {

struct SweepOptions {
    Moment moment;
    int threads = 1;                         // the answers do not depend on it
    std::atomic<bool> const* stop = nullptr; // once it is true, what is not answered yet is left out
};

// [V] or [A]. Not a number: that bank has no operating point, or that terminal no path to the reference.
class SweepAnswers {
public:
    SweepAnswers(std::size_t measures, std::size_t banks);
    std::size_t banks() const { return banks_; }
    std::span<double const> of(std::size_t measure) const { return {values_.get() + measure * banks_, banks_}; }

    double* data() { return values_.get(); } // by measure, then by bank
    std::size_t size() const { return size_; }

private:
    std::size_t banks_, size_;
    std::unique_ptr<double[]> values_; // not cleared first: every one is written
};

// Throws std::invalid_argument for keys of different numbers of values, for a key that is no quantity, for a value out
// of the key's range, for one that would change the wiring (no resistance at all), where the current of an ideal
// connection is asked for, for options out of their range (network/option_limits.hpp), and where build() does;
// std::out_of_range for an unknown part, key or terminal. Without a key there is one bank: the one that is given.
SweepAnswers sweep(Bank const& bank, std::vector<SweptKey> const& keys, std::vector<Measure> const& measures,
                   SweepOptions const& options = {});

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/sweep_inl.hpp"
#endif
