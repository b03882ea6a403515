// Bodies of variants.hpp.
#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/solver/linear/elimination_plan.hpp"
#include "bankwright/solver/topology.hpp"
#include "bankwright/solver/validate.hpp"
#include "bankwright/solver/variants.hpp"
#include "bankwright/solver/variants/base_inverse.hpp"
#include "bankwright/solver/variants/variant_lanes.hpp"
#include "bankwright/solver/variants/variant_ports.hpp"
#include "bankwright/solver/variants/variant_terms.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <stdexcept>
#include <utility>
#include <vector>

namespace bankwright::solver {

struct Variants::Base {
    Circuit circuit;
    VariantOptions options;
    Topology topology;
    std::optional<BaseInverse> inverse;  // none where the base is no circuit, or too large
    std::vector<std::size_t> port_loads; // whose current depends on their voltage
    VariantBase known;
    int width = 0;
};

BANKWRIGHT_INLINE Variants::Variants(Circuit base, VariantOptions options) : base_(std::make_unique<Base>()) {
    base_->circuit = std::move(base);
    base_->options = options;
    base_->width = (std::max(base_->circuit.nodes, 0) + 7) / 8 * 8;
    if (!runs_here(options.set)) base_->options.set = InstructionSet::portable;
    if (!is_valid(base_->circuit)) return;
    base_->topology = topology(base_->circuit);
    if (base_->topology.merged_nodes > options.solve.star_mesh_limit) return;
    base_->inverse.emplace(base_->circuit, base_->topology);
    base_->known = VariantBase(base_->circuit, base_->topology);
    for (std::size_t l = 0; l < base_->circuit.loads.size(); ++l)
        if (base_->topology.load_feed[l] == Feed::port &&
            !std::holds_alternative<ConstantCurrent>(base_->circuit.loads[l].law))
            base_->port_loads.push_back(l);
}

BANKWRIGHT_INLINE Variants::Variants(std::unique_ptr<Base> base) : base_(std::move(base)) {}
BANKWRIGHT_INLINE Variants::~Variants() = default;
BANKWRIGHT_INLINE Variants::Variants(Variants&&) noexcept = default;
BANKWRIGHT_INLINE Variants& Variants::operator=(Variants&&) noexcept = default;

BANKWRIGHT_INLINE Variants Variants::answering(int red, int black) const {
    auto base = std::make_unique<Base>();
    base->circuit = base_->circuit;
    for (Branch& branch : base->circuit.branches)
        branch.emf = 0.0;
    base->circuit.loads = {{black, red, ConstantCurrent{1.0}}};
    base->options = base_->options;
    base->topology = base_->topology;
    if (base_->inverse) base->inverse.emplace(base_->inverse->answering(red, black));
    base->known = VariantBase(base->circuit, base->topology);
    base->width = base_->width;
    return Variants(std::move(base));
}

BANKWRIGHT_INLINE int Variants::width() const { return base_->width; }

BANKWRIGHT_INLINE Circuit Variants::circuit(Change const* changes, std::size_t each) const {
    Circuit changed = base_->circuit;
    std::vector<std::size_t> gone;
    std::vector<char> seen(changed.branches.size(), 0);
    for (Change const* change = changes; change != changes + each; ++change) {
        bool const is_gone = change->now.resistance == std::numeric_limits<double>::infinity();
        if (change->branch < 0) {
            if (!is_gone) changed.branches.push_back(change->now);
            continue;
        }
        auto const b = as_index(change->branch);
        if (b >= seen.size()) throw std::invalid_argument("a change is of a branch that the circuit does not have");
        if (seen[b]) throw std::invalid_argument("a variant changes a branch twice");
        seen[b] = 1;
        if (is_gone)
            gone.push_back(b);
        else
            changed.branches[b] = change->now;
    }
    std::sort(gone.rbegin(), gone.rend());
    for (std::size_t b : gone)
        changed.branches.erase(changed.branches.begin() + static_cast<std::ptrdiff_t>(b));
    return changed;
}

namespace internal {

// The first variants, `most` of them or fewer, that two terms are enough for; returns how many they are.
inline int fill(VariantTerm (*into)[2], VariantBase const& known, Change const* changes, std::size_t each, int most) {
    for (int lane = 0; lane < most; ++lane, changes += each) {
        int const rank = known.terms(changes, each, into[lane], 2);
        if (rank < 0) return lane;
        for (int i = rank; i < 2; ++i)
            into[lane][i] = {};
    }
    return most;
}

} // namespace internal

BANKWRIGHT_INLINE void Variants::solve(Change const* changes, std::size_t each, std::size_t count, double* volts,
                                       VariantAnswer* answers) const {
    Base const& base = *base_;
    auto const width = as_index(base.width);
    double const limit = base.inverse ? base.options.accuracy * base.inverse->largest : 0.0;
    auto const afresh = [&](std::size_t v) {
        Solution const solution = solver::solve(circuit(changes + v * each, each), base.options.solve);
        answers[v] = {solution.status, false, 0.0};
        double* const row = volts + v * width;
        std::fill_n(row, width, std::numeric_limits<double>::quiet_NaN());
        if (solution.status == Status::solved) std::copy(solution.volts.begin(), solution.volts.end(), row);
    };
    auto const by_itself = [&](std::size_t v) {
        constexpr int most_terms = 16;
        VariantTerm terms[most_terms];
        int const rank = base.inverse ? base.known.terms(changes + v * each, each, terms, most_terms) : -1;
        VariantAnswer answer;
        if (rank >= 0)
            answer = update_with_ports(*base.inverse, base.circuit, base.port_loads, terms, rank,
                                       base.options.solve.max_iterations, volts + v * width);
        if (answer.updated && answer.error <= limit)
            answers[v] = answer;
        else
            afresh(v);
    };

    bool const is_bare = base.inverse && base.port_loads.empty(); // then ranks up to two go in lanes
    VariantBlock block;
    for (std::size_t v = 0; v < count;) {
        int const most = is_bare ? static_cast<int>(std::min<std::size_t>(lanes, count - v)) : 0;
        int const used = internal::fill(block.terms, base.known, changes + v * each, each, most);
        if (used == 0) {
            by_itself(v++);
            continue;
        }
        for (int lane = 0; lane < used; ++lane)
            block.volts[lane] = volts + (v + as_index(lane)) * width;
        update_block(*base.inverse, block, used, base.options.set);
        for (int lane = 0; lane < used; ++lane, ++v) {
            if (block.error[lane] <= limit)
                answers[v] = {Status::solved, true, block.error[lane]};
            else
                afresh(v);
        }
    }
}

} // namespace bankwright::solver
