// One resistance of a bank swept in C++, by the public door and by a loop written by hand: what Python is held against.
#include "bankwright/bank/bank.hpp"
#include "bankwright/config/read.hpp"
#include "bankwright/network/build.hpp"
#include "bankwright/network/to_branches.hpp"
#include "bankwright/solver/batch.hpp"

#include <algorithm>
#include <cstddef>
#include <memory>
#include <string_view>
#include <vector>

using namespace bankwright;

namespace {

struct Swept {
    solver::BatchPlan plan;
    std::vector<double> fixed;
    std::vector<double> rows; // for the public door: every parameter of every bank
    std::vector<double> volts;
    int parameter = 0;
    int plus = 0, minus = 0;
};

} // namespace

extern "C" {

// The battery's resistance is swept, the load's voltage is asked for. `count` values [ohm].
Swept* sweep_open(char const* text, char const* battery, char const* load, double const* ohms, std::size_t count) {
    auto const bank = read(text).bank;
    auto const network = build(bank);
    auto swept = std::make_unique<Swept>();
    auto const& asked = part_of(network, load).elements.front();
    swept->plus = asked.from;
    swept->minus = asked.to;
    swept->plan = solver::compile(network.circuit, {swept->plus, swept->minus});
    swept->fixed = solver::parameters_of(swept->plan, network.circuit);
    auto const branch = static_cast<std::size_t>(part_of(network, battery).elements.front().index);
    swept->parameter = swept->plan.layout.resistance[branch];
    for (std::size_t i = 0; i < count; ++i) {
        swept->rows.insert(swept->rows.end(), swept->fixed.begin(), swept->fixed.end());
        swept->rows[i * swept->fixed.size() + static_cast<std::size_t>(swept->parameter)] = ohms[i];
    }
    swept->volts.resize(count * swept->plan.wanted.size());
    return swept.release();
}

void sweep_close(Swept* swept) { delete swept; }

void sweep_rows(Swept* swept, std::size_t count, double* answers) {
    solver::solve_rows(swept->plan, swept->rows.data(), count, swept->volts.data());
    auto const wide = swept->plan.wanted.size();
    auto const at = [&](int node) {
        auto const& wanted = swept->plan.wanted;
        return static_cast<std::size_t>(std::find(wanted.begin(), wanted.end(), node) - wanted.begin());
    };
    auto const plus = at(swept->plus), minus = at(swept->minus);
    for (std::size_t i = 0; i < count; ++i)
        answers[i] = swept->volts[i * wide + plus] - swept->volts[i * wide + minus];
}

void sweep_blocks(Swept* swept, double const* ohms, std::size_t count, double* answers) {
    solver::Block block(swept->plan);
    constexpr std::size_t lanes = solver::lanes;
    for (int p = 0; p < swept->plan.parameters(); ++p)
        std::fill_n(block.parameter(p), lanes, swept->fixed[static_cast<std::size_t>(p)]);
    for (std::size_t begin = 0; begin < count; begin += lanes) {
        auto const used = std::min(lanes, count - begin);
        std::copy_n(ohms + begin, used, block.parameter(swept->parameter));
        block.solve(static_cast<int>(used));
        double const* const plus = block.volts(swept->plus);
        double const* const minus = block.volts(swept->minus);
        for (std::size_t lane = 0; lane < used; ++lane)
            answers[begin + lane] = plus[lane] - minus[lane];
    }
}
}
