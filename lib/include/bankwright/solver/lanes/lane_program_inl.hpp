// Bodies of lane_program.hpp.
#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/solver/lanes.hpp"
#include "bankwright/solver/lanes/lane_program.hpp"

#include <algorithm>
#include <utility>

namespace bankwright::solver {

namespace internal {

// Hands out rows and remembers which hold something already.
class LaneProgramWriter {
public:
    LaneProgramWriter(Circuit const& circuit, Topology const& topology, EliminationPlan const& plan,
                      ParameterLayout const& layout)
        : circuit_(circuit), topology_(topology), plan_(plan) {
        program_.zero = take_rows(1);
        program_.scrap = take_rows(1);
        program_.first_parameter = take_rows(layout.count);
        slots_ = take_rows(plan.slots());
        nodes_ = take_rows(static_cast<int>(plan.pivots.size()));
        node_row_.assign(as_index(plan.nodes), program_.zero);
        for (std::size_t k = 0; k < plan.pivots.size(); ++k)
            node_row_[as_index(plan.pivots[k].node)] = nodes_ + static_cast<int>(k) * lanes;
    }

    LaneProgram write(ParameterLayout const& layout, std::vector<char> const& wanted, bool leave_last) {
        write_conductances(layout);
        write_sources(layout);
        std::vector<Pivot> order = by_height();
        if (leave_last) order.pop_back();
        for (Pivot const& pivot : order)
            write_forward(pivot);
        if (leave_last) {
            Pivot const& last = plan_.pivots.back();
            program_.port_siemens = slot_row(last.first);
            program_.port_volts = node_row_[as_index(last.node)];
            program_.port_injection = read(program_.port_volts);
        }
        write_backward(wanted, order);
        program_.rows = next_ / lanes;
        return std::move(program_);
    }

private:
    int take_rows(int count) { return std::exchange(next_, next_ + count * lanes); }
    int slot_row(int slot) const { return slots_ + slot * lanes; }
    int parameter(ParameterLayout const&, int number) const { return program_.first_parameter + number * lanes; }
    bool root(int node) const { return node_row_[as_index(node)] == program_.zero; }

    int read(int row) const {
        return row < static_cast<int>(held_.size()) && held_[as_index(row)] ? row : program_.zero;
    }
    void hold(int row) {
        if (row >= static_cast<int>(held_.size())) held_.resize(as_index(row) + 1, 0);
        held_[as_index(row)] = 1;
    }
    // A row that is added to: where the sum so far is read, where the new one goes.
    void add_to(std::vector<int>& list, int row) {
        if (row == program_.zero) { // a root takes whatever comes
            list.insert(list.end(), {program_.zero, program_.scrap});
            return;
        }
        list.insert(list.end(), {read(row), row});
        hold(row);
    }

    // Neighbors in the order depend on each other and would wait; any order that keeps a pivot before its first later
    // neighbor (its parent in the elimination tree) does the same arithmetic, so take the tree level by level.
    std::vector<Pivot> by_height() const {
        std::vector<int> height(as_index(plan_.nodes), 0);
        for (Pivot const& pivot : plan_.pivots) {
            int& parent = height[as_index(plan_.later[as_index(pivot.first)])];
            parent = std::max(parent, height[as_index(pivot.node)] + 1);
        }
        std::vector<Pivot> order(plan_.pivots);
        if (!order.empty()) // the last one stays last
            std::stable_sort(order.begin(), order.end() - 1, [&](Pivot const& a, Pivot const& b) {
                return height[as_index(a.node)] < height[as_index(b.node)];
            });
        return order;
    }

    void write_conductances(ParameterLayout const& layout) {
        std::vector<int> sharing(as_index(plan_.slots()), 0);
        for (int line : topology_.branch_line)
            if (line >= 0) ++sharing[as_index(plan_.slot[as_index(line)])];
        std::vector<std::pair<int, int>> inverses; // resistance, conductance
        for (std::size_t b = 0; b < circuit_.branches.size(); ++b) {
            int const line = topology_.branch_line[b];
            if (line < 0) {
                branch_row_.push_back(program_.scrap);
                continue;
            }
            int const slot = plan_.slot[as_index(line)];
            branch_row_.push_back(sharing[as_index(slot)] == 1 ? slot_row(slot) : take_rows(1));
            hold(branch_row_.back());
            inverses.emplace_back(parameter(layout, layout.resistance[b]), branch_row_.back());
            if (sharing[as_index(slot)] == 1) continue;
            program_.sums.push_back(branch_row_.back());
            add_to(program_.sums, slot_row(slot));
        }
        while (!inverses.empty() && inverses.size() % 4 != 0)
            inverses.emplace_back(inverses.front().first, program_.scrap);
        for (std::size_t i = 0; i < inverses.size(); i += 4) {
            for (std::size_t j = i; j < i + 4; ++j)
                program_.reciprocals.push_back(inverses[j].first);
            for (std::size_t j = i; j < i + 4; ++j)
                program_.reciprocals.push_back(inverses[j].second);
        }
    }

    void write_sources(ParameterLayout const& layout) {
        for (std::size_t b = 0; b < circuit_.branches.size(); ++b) {
            int const line = topology_.branch_line[b];
            if (line < 0 || layout.emf[b] < 0) continue;
            program_.sources.insert(program_.sources.end(), {branch_row_[b], parameter(layout, layout.emf[b])});
            add_to(program_.sources, node_row_[as_index(topology_.lines[as_index(line)].from)]);
            add_to(program_.sources, node_row_[as_index(topology_.lines[as_index(line)].to)]);
        }
        for (std::size_t l = 0; l < circuit_.loads.size(); ++l) {
            if (topology_.load_feed[l] != Feed::port || !std::holds_alternative<ConstantCurrent>(circuit_.loads[l].law))
                continue;
            program_.currents.push_back(parameter(layout, layout.load[l]));
            add_to(program_.currents, node_row_[as_index(topology_.merged[as_index(circuit_.loads[l].plus)])]);
            add_to(program_.currents, node_row_[as_index(topology_.merged[as_index(circuit_.loads[l].minus)])]);
        }
    }

    void write_forward(Pivot const& pivot) {
        auto& record = program_.forward;
        int const row = node_row_[as_index(pivot.node)];
        bool const quiet = read(row) == program_.zero;
        bool const rooted = root(plan_.later[as_index(pivot.first + pivot.degree - 1)]);
        int const kind = quiet ? pivot_quiet : rooted ? pivot_rooted : pivot_plain;
        record.insert(record.end(), {pivot.degree * 3 + kind, slot_row(pivot.first), read(row), row});
        if (!quiet) {
            hold(row);
            for (int i = 0; i < pivot.degree - (rooted ? 1 : 0); ++i)
                add_to(record, node_row_[as_index(plan_.later[as_index(pivot.first + i)])]);
        }
        for (int pair = 0; pair < pivot.degree * (pivot.degree - 1) / 2; ++pair)
            add_to(record, slot_row(plan_.pairs[as_index(pivot.pair_first + pair)]));
    }

    void write_backward(std::vector<char> const& wanted, std::vector<Pivot> const& order) {
        std::vector<char> needed(wanted);
        auto const live = [&](Pivot const& p) { // neighbors that are no root
            return p.degree - (root(plan_.later[as_index(p.first + p.degree - 1)]) ? 1 : 0);
        };
        for (Pivot const& pivot : plan_.pivots) // a voltage needs those of all later neighbors
            if (needed[as_index(pivot.node)])
                for (int i = 0; i < live(pivot); ++i)
                    needed[as_index(plan_.later[as_index(pivot.first + i)])] = 1;
        program_.node.assign(as_index(plan_.nodes), program_.scrap);
        for (int n = 0; n < plan_.nodes; ++n)
            if (needed[as_index(n)] || root(n)) program_.node[as_index(n)] = node_row_[as_index(n)];
        for (std::size_t k = order.size(); k-- > 0;) {
            Pivot const& pivot = order[k];
            if (!needed[as_index(pivot.node)]) continue;
            int const row = node_row_[as_index(pivot.node)], count = live(pivot);
            // A sole neighbor has the whole share.
            bool const whole = pivot.degree == 1;
            auto& record = program_.backward;
            record.insert(record.end(), {whole ? -1 : count, slot_row(pivot.first), read(row), row});
            if (whole && count == 0) record.push_back(program_.zero);
            for (int i = 0; i < count; ++i)
                record.push_back(node_row_[as_index(plan_.later[as_index(pivot.first + i)])]);
        }
    }

    Circuit const& circuit_;
    Topology const& topology_;
    EliminationPlan const& plan_;
    LaneProgram program_;
    std::vector<int> branch_row_; // by branch: its conductance
    std::vector<int> node_row_;   // by merged node; the zero row for roots
    std::vector<char> held_;      // by offset: written before
    int next_ = 0, slots_ = 0, nodes_ = 0;
};

} // namespace internal

BANKWRIGHT_INLINE LaneProgram write_program(Circuit const& circuit, Topology const& topology,
                                            EliminationPlan const& plan, ParameterLayout const& layout,
                                            std::vector<char> const& wanted, bool leave_last) {
    return internal::LaneProgramWriter(circuit, topology, plan, layout).write(layout, wanted, leave_last);
}

} // namespace bankwright::solver
