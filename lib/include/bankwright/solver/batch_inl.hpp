// Bodies of batch.hpp.
#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/solver/batch.hpp"
#include "bankwright/solver/lanes/lane_kernels.hpp"
#include "bankwright/solver/lanes/lane_transpose.hpp"
#include "bankwright/solver/load_laws.hpp"
#include "bankwright/solver/loads/port_formula.hpp"
#include "bankwright/solver/share_out.hpp"
#include "bankwright/solver/validate.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>

namespace bankwright::solver {

BANKWRIGHT_INLINE Block::Block(BatchPlan const& plan, InstructionSet set)
    : plan_(&plan), set_(runs_here(set) ? set : InstructionSet::portable),
      rows_(as_index(plan.loads == LoadMethod::ports ? plan.parameters() + plan.pattern.nodes : plan.program.rows)) {
    if (plan.loads == LoadMethod::ports) {
        linear_ = std::make_unique<Block>(*plan.linear, set_);
        ports_ = std::make_unique<PortLanes>(plan.port_loads.size());
    }
    for (int node = 0; node < plan.pattern.nodes; ++node)
        volts_.push_back(plan.loads == LoadMethod::ports
                             ? (plan.parameters() + node) * lanes
                             : plan.program.node[as_index(plan.topology.merged[as_index(node)])]);
    if (plan.loads != LoadMethod::formula) return;
    int const island = plan.topology.island[as_index(plan.pattern.loads[as_index(plan.formula_load)].minus)];
    reference_ = plan.program.node[as_index(plan.topology.root[as_index(island)])];
    if (reference_ == plan.program.zero) return; // it is the load's minus end
    for (int node = 0; node < plan.pattern.nodes; ++node) {
        int& offset = volts_[as_index(node)];
        if (plan.topology.island[as_index(node)] != island || offset == plan.program.scrap) continue;
        if (offset == plan.program.zero)
            offset = plan.program.scrap;
        else if (std::find(shifted_.begin(), shifted_.end(), offset) == shifted_.end())
            shifted_.push_back(offset);
    }
}

BANKWRIGHT_INLINE void Block::solve(int used) {
    if (plan_->loads == LoadMethod::ports) return solve_ports(used);
    run_forward(plan_->program, rows_.data(), used, set_);
    if (plan_->loads == LoadMethod::formula) solve_load(used);
    run_backward(plan_->program, rows_.data(), used, set_);
    if (plan_->loads == LoadMethod::formula) shift_to_reference();
}

// The last pivot is the load's plus end and its one neighbor the minus end: b / c volts behind 1 / c ohms.
BANKWRIGHT_INLINE void Block::solve_load(int used) {
    LaneProgram const& program = plan_->program;
    auto const number = as_index(plan_->formula_load);
    double const* siemens = rows_.data() + program.port_siemens;
    double const* injection = rows_.data() + program.port_injection;
    double* volts = rows_.data() + program.port_volts;
    double const* first = parameter(plan_->layout.load[number]);
    Law const& kind = plan_->pattern.loads[number].law;
    for (int lane = 0; lane < used; ++lane) {
        double const ohms = 1.0 / siemens[lane], open = injection[lane] * ohms;
        double const* p = first + lane;
        double amps = 0.0;
        if (std::holds_alternative<ConstantPower>(kind))
            amps = current_from(ConstantPower{p[0]}, open, ohms);
        else if (std::holds_alternative<SquareLaw>(kind))
            amps = current_from(SquareLaw{p[0], p[lanes], p[2 * lanes]}, open, ohms);
        else
            amps = current_from(LimitedSource{p[0], p[lanes]}, open, ohms);
        volts[lane] = open - ohms * amps;
    }
}

// So far the load's minus end is 0 V. It has no row of its own; the scrap row is lent to it.
BANKWRIGHT_INLINE void Block::shift_to_reference() {
    if (shifted_.empty()) return;
    double shift[lanes];
    std::copy_n(rows_.data() + reference_, lanes, shift);
    for (int offset : shifted_)
        for (int lane = 0; lane < lanes; ++lane)
            rows_.data()[offset + lane] -= shift[lane];
    for (int lane = 0; lane < lanes; ++lane)
        rows_.data()[plan_->program.scrap + lane] = -shift[lane];
}

BANKWRIGHT_INLINE void Block::branch_amps(int branch, double* amps) const {
    auto const b = as_index(branch);
    double const* from = volts(plan_->pattern.branches[b].from);
    double const* to = volts(plan_->pattern.branches[b].to);
    double const* parameters = rows_.data() + plan_->program.first_parameter;
    double const* ohms = parameters + plan_->layout.resistance[b] * lanes;
    double const* emf = plan_->layout.emf[b] < 0 ? nullptr : parameters + plan_->layout.emf[b] * lanes;
    for (int lane = 0; lane < lanes; ++lane)
        amps[lane] = (from[lane] - to[lane] + (emf ? emf[lane] : 0.0)) / ohms[lane];
}

namespace internal {

// Does every load that follows its voltage have numbers that its law allows? A constant current may be any number.
inline bool loads_are_sound(Block& block, int used) {
    Circuit const& pattern = block.plan().pattern;
    for (std::size_t l = 0; l < pattern.loads.size(); ++l) {
        Law const& law = pattern.loads[l].law;
        if (std::holds_alternative<ConstantCurrent>(law)) continue;
        double const* first = block.parameter(block.plan().layout.load[l]);
        for (int lane = 0; lane < used; ++lane)
            if (!is_valid(with_numbers(law, first + lane, lanes))) return false;
    }
    return true;
}

} // namespace internal

BANKWRIGHT_INLINE void solve_rows(BatchPlan const& plan, double const* parameters, std::size_t count, double* volts,
                                  BatchOptions const& options) {
    auto const width = as_index(plan.parameters()), wanted = plan.wanted.size();
    constexpr std::size_t wide = lanes;
    auto const resistances = static_cast<int>(plan.pattern.branches.size());
    std::vector<char> wrong((count + wide - 1) / wide, 0);
    share_out(wrong.size(), options.threads, [&](std::size_t first, std::size_t last) {
        Block block(plan, options.set);
        std::vector<double> spare(wanted); // of lanes that have no bank
        std::vector<double const*> rows;
        for (int node : plan.wanted)
            rows.push_back(block.volts(node));
        for (std::size_t b = first; b < last; ++b) {
            double const* in[wide];
            double* out[wide];
            for (std::size_t lane = 0; lane < wide; ++lane) {
                std::size_t const bank = b * wide + lane;
                in[lane] = parameters + std::min(bank, count - 1) * width;
                out[lane] = bank < count ? volts + bank * wanted : spare.data();
            }
            bool const sound = banks_to_rows(in, plan.parameters(), resistances, block.parameter(0), options.set);
            // The next block comes from memory while this one is being solved.
            double const* const next = in[wide - 1] + width;
            double const* const end = parameters + count * width;
            for (double const* p = next; p < end && p < next + wide * width; p += 8)
                __builtin_prefetch(p);
            int const used = static_cast<int>(std::min(wide, count - b * wide));
            if (sound && internal::loads_are_sound(block, used)) {
                block.solve(used);
                rows_to_banks(rows.data(), static_cast<int>(wanted), out, options.set);
            } else {
                wrong[b] = 1;
            }
        }
    });
    if (std::find(wrong.begin(), wrong.end(), 1) != wrong.end())
        throw std::invalid_argument(
            "a parameter is not finite, a resistance not within 1e-75 to 1e75 ohm, or a load's number outside its law");
}

// What follows is for several loads whose current depends on their voltage (LoadMethod::ports).
//
// Method. With each such load replaced by a given current the banks are linear. One solve with these currents at rest
// gives the open voltage of every port, one with 1 A through it alone, everything else at rest, what each port pulls
// down (Z). The currents that fit V = V0 - Z I and every law are sought in all lanes at once (port_lanes.hpp), and one
// more solve with them gives the voltages.

BANKWRIGHT_INLINE double* Block::port_amps(std::size_t port) {
    return linear_->parameter(plan_->linear->layout.load[as_index(plan_->port_loads[port])]);
}

BANKWRIGHT_INLINE double Block::across(std::size_t port, int lane) const {
    Load const& load = plan_->pattern.loads[as_index(plan_->port_loads[port])];
    return linear_->volts(load.plus)[lane] - linear_->volts(load.minus)[lane];
}

// Everything but the currents of the ports, which are set to rest.
BANKWRIGHT_INLINE void Block::feed(Sources sources) {
    ParameterLayout const &from = plan_->layout, &to = plan_->linear->layout;
    auto const copy = [&](int there, int here, bool rests) {
        if (rests)
            std::fill_n(linear_->parameter(there), lanes, 0.0);
        else
            std::copy_n(parameter(here), lanes, linear_->parameter(there));
    };
    bool const rest = sources == Sources::at_rest;
    for (std::size_t b = 0; b < from.resistance.size(); ++b) {
        copy(to.resistance[b], from.resistance[b], false);
        if (from.emf[b] >= 0) copy(to.emf[b], from.emf[b], rest);
    }
    for (std::size_t l = 0; l < from.load.size(); ++l)
        copy(to.load[l], from.load[l], rest || !std::holds_alternative<ConstantCurrent>(plan_->pattern.loads[l].law));
}

BANKWRIGHT_INLINE void Block::solve_ports(int used) {
    std::size_t const ports = plan_->port_loads.size();
    feed(Sources::as_given);
    linear_->solve(used);
    for (std::size_t p = 0; p < ports; ++p)
        for (int lane = 0; lane < used; ++lane)
            ports_->open_volts(p)[lane] = across(p, lane);
    feed(Sources::at_rest);
    for (std::size_t p = 0; p < ports; ++p) {
        std::fill_n(port_amps(p), lanes, 1.0);
        linear_->solve(used);
        std::fill_n(port_amps(p), lanes, 0.0);
        for (std::size_t q = 0; q < ports; ++q)
            for (int lane = 0; lane < used; ++lane)
                ports_->ohms(q, p)[lane] = -across(q, lane);
    }
    for (std::size_t p = 0; p < ports; ++p) {
        auto const load = as_index(plan_->port_loads[p]);
        ports_->set_law(p, plan_->pattern.loads[load].law, parameter(plan_->layout.load[load]));
    }
    ports_->find_currents(used);

    feed(Sources::as_given);
    for (std::size_t p = 0; p < ports; ++p)
        std::copy_n(ports_->amps(p), lanes, port_amps(p));
    linear_->solve(used);
    for (int node : plan_->wanted) {
        double* row = rows_.data() + volts_[as_index(node)];
        double const* found = linear_->volts(node);
        for (int lane = 0; lane < used; ++lane)
            row[lane] = ports_->is_lost(lane) ? std::numeric_limits<double>::quiet_NaN() : found[lane];
    }
}

} // namespace bankwright::solver
