// Bodies of small_signal.hpp.
#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/solver/currents/branch_currents.hpp"
#include "bankwright/solver/linear/elimination_plan.hpp"
#include "bankwright/solver/load_laws.hpp"
#include "bankwright/solver/loads/ports.hpp"
#include "bankwright/solver/small_signal.hpp"
#include "bankwright/solver/validate.hpp"

#include <utility>

#include <Eigen/Dense>

namespace bankwright::solver {

BANKWRIGHT_INLINE SmallSignal::SmallSignal(Circuit circuit, std::vector<NodePair> const& pairs, LoadsDo loads,
                                           SolveOptions const& options)
    : quiet_(std::move(circuit)), loads_(quiet_.loads.size()) {
    for (NodePair const& pair : pairs)
        quiet_.loads.push_back({pair.plus, pair.minus, ConstantCurrent{0.0}});
    if (!is_valid(quiet_)) return;
    topology_ = with_plan(topology(quiet_), options.star_mesh_limit);
    point_ = solve(quiet_, topology_, options);
    if (point_.status != Status::solved) return;
    std::vector<double> siemens(topology_.lines.size(), 0.0);
    for (std::size_t b = 0; b < quiet_.branches.size(); ++b) {
        quiet_.branches[b].emf = 0.0;
        int const line = topology_.branch_line[b];
        if (line >= 0) siemens[as_index(line)] = 1.0 / quiet_.branches[b].resistance;
    }
    network_ = std::make_unique<LinearNetwork>(topology_, std::move(siemens), options.star_mesh_limit);
    if (loads == LoadsDo::follow) linearize();
}

BANKWRIGHT_INLINE double SmallSignal::volts(std::size_t load) const {
    return point_.volts[as_index(quiet_.loads[load].plus)] - point_.volts[as_index(quiet_.loads[load].minus)];
}

BANKWRIGHT_INLINE void SmallSignal::linearize() {
    std::vector<std::size_t> ports;
    for (std::size_t l = 0; l < loads_; ++l) {
        if (topology_.load_feed[l] != Feed::port) continue;
        Law const& law = quiet_.loads[l].law;
        double const amps = point_.load_amps[l];
        Tangent tangent{l, 0.0, false};
        if (std::holds_alternative<ConstantPower>(law) && amps > 0.0) tangent.siemens = -amps / volts(l);
        if (auto const* square = std::get_if<SquareLaw>(&law)) tangent.siemens = slope(*square, volts(l));
        if (auto const* source = std::get_if<LimitedSource>(&law))
            tangent.holds = amps < 0.0 && amps > -source->amperes;
        if (tangent.siemens == 0.0 && !tangent.holds) continue;
        tangents_.push_back(tangent);
        ports.push_back(l);
    }
    ohms_ = reduce_to_ports(quiet_, topology_, *network_, std::vector<double>(topology_.lines.size(), 0.0), ports).ohms;
}

BANKWRIGHT_INLINE SmallAnswer SmallSignal::answer(Circuit const& changed, std::vector<double> line_amps) const {
    auto const across = [&](std::vector<double> const& volts, std::size_t load) {
        auto const end = [&](int node) { return as_index(topology_.merged[as_index(node)]); };
        if (topology_.load_feed[load] != Feed::port) return 0.0;
        return volts[end(quiet_.loads[load].plus)] - volts[end(quiet_.loads[load].minus)];
    };
    SmallAnswer a;
    a.load_amps.assign(quiet_.loads.size(), 0.0);
    for (std::size_t l = 0; l < quiet_.loads.size(); ++l)
        if (topology_.load_feed[l] == Feed::port) a.load_amps[l] = line_amps[line(l)];
    std::vector<double> volts = network_->volts(line_amps);
    if (!tangents_.empty()) { // I - s (V0 - Z I) = 0, or V0 - Z I = 0 where the voltage is held
        auto const count = static_cast<Eigen::Index>(tangents_.size());
        Eigen::MatrixXd left(count, count);
        Eigen::VectorXd right(count);
        for (Eigen::Index i = 0; i < count; ++i) {
            Tangent const& t = tangents_[static_cast<std::size_t>(i)];
            double const weight = t.holds ? 1.0 : t.siemens;
            for (Eigen::Index j = 0; j < count; ++j)
                left(i, j) = weight * ohms_[static_cast<std::size_t>(i * count + j)];
            if (!t.holds) left(i, i) += 1.0;
            right[i] = weight * across(volts, t.load);
        }
        // Of several answers the smallest: two sources that hold one pair of posts share evenly.
        Eigen::VectorXd const amps = left.completeOrthogonalDecomposition().solve(right);
        for (Eigen::Index i = 0; i < count; ++i) {
            std::size_t const load = tangents_[static_cast<std::size_t>(i)].load;
            line_amps[line(load)] = a.load_amps[load] = amps[i];
        }
        volts = network_->volts(line_amps);
    }
    for (std::size_t l = 0; l < quiet_.loads.size(); ++l)
        (l < loads_ ? a.load_volts : a.pair_volts).push_back(across(volts, l));
    a.branch_amps = branch_currents(changed, topology_, *network_, volts, a.load_amps);
    return a;
}

BANKWRIGHT_INLINE SmallAnswer SmallSignal::draw(std::size_t pair) const {
    std::vector<double> line_amps(topology_.lines.size(), 0.0);
    if (feed(pair) == Feed::port) line_amps[line(loads_ + pair)] = 1.0;
    SmallAnswer drawn = answer(quiet_, std::move(line_amps));
    drawn.load_amps.resize(loads_);
    return drawn;
}

BANKWRIGHT_INLINE SmallAnswer SmallSignal::push(int branch) const {
    auto const b = as_index(branch);
    Circuit pushed = quiet_;
    pushed.branches[b].emf = 1.0;
    std::vector<double> line_amps(topology_.lines.size(), 0.0);
    if (topology_.branch_line[b] >= 0)
        line_amps[as_index(topology_.branch_line[b])] = 1.0 / pushed.branches[b].resistance;
    SmallAnswer answered = answer(pushed, std::move(line_amps));
    answered.load_amps.resize(loads_);
    return answered;
}

} // namespace bankwright::solver
