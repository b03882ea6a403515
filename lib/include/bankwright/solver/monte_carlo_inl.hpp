// Bodies of monte_carlo.hpp.
#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/solver/lanes/lane_random.hpp"
#include "bankwright/solver/lanes/lane_transpose.hpp"
#include "bankwright/solver/monte_carlo.hpp"
#include "bankwright/solver/share_out.hpp"
#include "bankwright/solver/validate.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>

namespace bankwright::solver {

namespace internal {

// Sums over what a gauge shows, counted from a value near all of them so that nothing cancels.
struct Tally {
    std::size_t count = 0;
    double sum = 0.0, squares = 0.0;
    double least = std::numeric_limits<double>::infinity(), most = -std::numeric_limits<double>::infinity();

    void add(double const* lane_values, int used, double origin) {
        for (int lane = 0; lane < used; ++lane) {
            double const x = lane_values[lane] - origin;
            if (!(x == x)) continue; // no answer
            ++count;
            sum += x;
            squares += x * x;
            least = std::min(least, x);
            most = std::max(most, x);
        }
    }
    void add(Tally const& other) {
        count += other.count;
        sum += other.sum;
        squares += other.squares;
        least = std::min(least, other.least);
        most = std::max(most, other.most);
    }
    Statistics statistics(double origin) const {
        if (count == 0) return {};
        double const n = static_cast<double>(count), mean = sum / n;
        double const variance = count > 1 ? std::max(0.0, (squares - mean * sum) / (n - 1.0)) : 0.0;
        return {count, origin + mean, std::sqrt(variance), origin + least, origin + most};
    }
};

// A block whose fixed parameters are in place, and the rows that are sampled for it.
class SampledBlock {
public:
    SampledBlock(BatchPlan const& plan, Spread const& spread, InstructionSet set) : block_(plan, set), set_(set) {
        for (int p = 0; p < plan.parameters(); ++p) {
            double const center = spread.center[as_index(p)];
            double const reach = std::abs(center) * spread.relative[as_index(p)];
            std::fill_n(block_.parameter(p), lanes, center);
            if (reach > 0.0) sampled_.push_back({p * lanes, center - reach, 2.0 * reach});
        }
    }
    void sample_and_solve(std::uint64_t seed, std::size_t number, int used) {
        sample_only(seed, number);
        block_.solve(used);
    }
    void sample_only(std::uint64_t seed, std::size_t number) {
        LaneGenerator generator = seeded(seed, number);
        sample(generator, sampled_.data(), static_cast<int>(sampled_.size()), block_.parameter(0), set_);
    }
    // The lanes' values; `buffer` may lend them a place.
    double const* read(Gauge const& gauge, double* buffer) const {
        if (gauge.kind == Gauge::node_volts) return block_.volts(gauge.number);
        if (gauge.kind == Gauge::span_volts) {
            double const* const high = block_.volts(gauge.number);
            double const* const low = block_.volts(gauge.other);
            for (int lane = 0; lane < lanes; ++lane)
                buffer[lane] = high[lane] - low[lane];
            return buffer;
        }
        block_.branch_amps(gauge.number, buffer);
        return buffer;
    }
    Block& block() { return block_; }

private:
    Block block_;
    InstructionSet set_;
    std::vector<SampledRow> sampled_;
};

inline void check_spread(BatchPlan const& plan, Spread const& spread, std::vector<Gauge> const& gauges) {
    auto const count = as_index(plan.parameters());
    if (spread.center.size() != count || spread.relative.size() != count)
        throw std::invalid_argument("a spread needs a center and a tolerance for each parameter of the plan");
    for (std::size_t p = 0; p < count; ++p) {
        bool const resistance = p < plan.pattern.branches.size();
        double const low = resistance ? 1e-74 : -1e75; // the block's own limits, with room for the tolerance
        if (!(spread.center[p] >= low && spread.center[p] <= 1e74))
            throw std::invalid_argument("a center is not finite, or a resistance not positive");
        if (!(spread.relative[p] >= 0.0 && spread.relative[p] <= 0.9))
            throw std::invalid_argument("a tolerance is not within 0 to 0.9");
    }
    for (double const end : {-1.0, 1.0}) { // no machine has a duty above 1
        std::vector<double> values = spread.center;
        for (std::size_t p = 0; p < count; ++p)
            values[p] *= 1.0 + end * spread.relative[p];
        for (Load const& load : circuit_of(plan, values.data()).loads)
            if (!is_valid(load.law)) throw std::invalid_argument("a tolerance takes a load's number out of its law");
    }
    auto const wanted = [&](int node) {
        return std::find(plan.wanted.begin(), plan.wanted.end(), node) != plan.wanted.end();
    };
    for (Gauge const& gauge : gauges) {
        bool const volts = gauge.kind != Gauge::branch_amps;
        if (gauge.kind == Gauge::span_volts && !wanted(gauge.other))
            throw std::invalid_argument("a gauge reads a node that the plan does not find");
        bool const there = gauge.number >= 0 &&
                           gauge.number < (volts ? plan.pattern.nodes : static_cast<int>(plan.pattern.branches.size()));
        if (!there || (volts ? !wanted(gauge.number)
                             : !wanted(plan.pattern.branches[as_index(gauge.number)].from) ||
                                   !wanted(plan.pattern.branches[as_index(gauge.number)].to)))
            throw std::invalid_argument("a gauge reads a node that the plan does not find");
    }
}

} // namespace internal

BANKWRIGHT_INLINE std::vector<Statistics> monte_carlo(BatchPlan const& plan, Spread const& spread,
                                                      std::vector<Gauge> const& gauges, std::size_t samples,
                                                      MonteCarloOptions const& options) {
    internal::check_spread(plan, spread, gauges);
    std::vector<double> origin; // what the gauges show with every part at its center
    double central[lanes];
    internal::SampledBlock at_center(plan, {spread.center, std::vector<double>(spread.center.size(), 0.0)},
                                     options.set);
    at_center.block().solve(1);
    for (Gauge const& gauge : gauges) {
        double const value = at_center.read(gauge, central)[0];
        origin.push_back(value == value ? value : 0.0);
    }

    // Sums are formed in groups that depend on the number of samples only, and added in their order.
    constexpr std::size_t wide = lanes;
    std::size_t const blocks = (samples + wide - 1) / wide, groups = std::min<std::size_t>(blocks, 256);
    std::vector<internal::Tally> tallies(groups * gauges.size());
    share_out(groups, options.threads, [&](std::size_t first, std::size_t last) {
        internal::SampledBlock sampled(plan, spread, options.set);
        double buffer[lanes];
        for (std::size_t g = first; g < last; ++g) {
            internal::Tally* const tally = tallies.data() + g * gauges.size();
            for (std::size_t b = blocks * g / groups; b < blocks * (g + 1) / groups; ++b) {
                int const used = static_cast<int>(std::min(wide, samples - b * wide));
                sampled.sample_and_solve(options.seed, b, used);
                for (std::size_t i = 0; i < gauges.size(); ++i)
                    tally[i].add(sampled.read(gauges[i], buffer), used, origin[i]);
            }
        }
    });
    std::vector<Statistics> statistics;
    for (std::size_t i = 0; i < gauges.size(); ++i) {
        internal::Tally all;
        for (std::size_t g = 0; g < groups; ++g)
            all.add(tallies[g * gauges.size() + i]);
        statistics.push_back(all.statistics(origin[i]));
    }
    return statistics;
}

BANKWRIGHT_INLINE std::vector<double> sampled_banks(BatchPlan const& plan, Spread const& spread, std::uint64_t seed,
                                                    std::size_t number, InstructionSet set) {
    internal::check_spread(plan, spread, {});
    internal::SampledBlock sampled(plan, spread, set);
    sampled.sample_only(seed, number);
    std::vector<double const*> rows;
    for (int p = 0; p < plan.parameters(); ++p)
        rows.push_back(sampled.block().parameter(p));
    std::vector<double> banks(rows.size() * as_index(lanes));
    double* out[lanes];
    for (int lane = 0; lane < lanes; ++lane)
        out[lane] = banks.data() + rows.size() * as_index(lane);
    rows_to_banks(rows.data(), plan.parameters(), out, set);
    return banks;
}

} // namespace bankwright::solver
