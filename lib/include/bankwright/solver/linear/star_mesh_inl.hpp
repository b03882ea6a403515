// Bodies of star_mesh.hpp.
#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/solver/linear/star_mesh.hpp"

#include <utility>

namespace bankwright::solver {

template <class Real>
StarMeshOf<Real>::StarMeshOf(std::shared_ptr<EliminationPlan const> plan, std::vector<Real> const& siemens)
    : plan_(std::move(plan)), siemens_(plan_->later.size(), Real(0)) {
    for (std::size_t line = 0; line < siemens.size(); ++line)
        siemens_[as_index(plan_->slot[line])] += siemens[line];
    ohms_.reserve(plan_->pivots.size());
    for (Pivot const& pivot : plan_->pivots) {
        Real const* c = siemens_.data() + pivot.first;
        Real sum = Real(0);
        for (int i = 0; i < pivot.degree; ++i)
            sum += c[i];
        Real const inverse = Real(1) / sum;
        ohms_.push_back(inverse);
        int const* pair = plan_->pairs.data() + pivot.pair_first;
        for (int i = 0; i < pivot.degree; ++i) {
            Real const share = c[i] * inverse; // c_i / s first: at most 1, so nothing overflows
            for (int j = i + 1; j < pivot.degree; ++j)
                siemens_[as_index(*pair++)] += share * c[j];
        }
    }
}

template <class Real>
std::vector<Real> StarMeshOf<Real>::volts(std::vector<Real> const& line_amps) const {
    std::vector<Real> f(siemens_.size(), Real(0));
    for (std::size_t line = 0; line < line_amps.size(); ++line)
        f[as_index(plan_->slot[line])] += plan_->backwards[line] ? -line_amps[line] : line_amps[line];

    std::size_t step = 0;
    for (Pivot const& pivot : plan_->pivots) {
        Real const inverse = ohms_[step++];
        Real const* c = siemens_.data() + pivot.first;
        Real const* g = f.data() + pivot.first;
        int const* pair = plan_->pairs.data() + pivot.pair_first;
        for (int i = 0; i < pivot.degree; ++i)
            for (int j = i + 1; j < pivot.degree; ++j)
                f[as_index(*pair++)] += c[i] * inverse * g[j] - c[j] * inverse * g[i];
    }
    std::vector<Real> volts(as_index(plan_->nodes), Real(0));
    for (; step-- > 0;) {
        Pivot const& pivot = plan_->pivots[step];
        Real sum = Real(0);
        for (int i = 0; i < pivot.degree; ++i) {
            auto const slot = as_index(pivot.first) + as_index(i);
            sum += siemens_[slot] * ohms_[step] * volts[as_index(plan_->later[slot])] - f[slot] * ohms_[step];
        }
        volts[as_index(pivot.node)] = sum;
    }
    return volts;
}

template <class Real>
std::vector<Real> StarMeshOf<Real>::volts_of_injections(std::vector<Real> node_amps) const {
    std::size_t step = 0;
    for (Pivot const& pivot : plan_->pivots) {
        Real const share = node_amps[as_index(pivot.node)] * ohms_[step++];
        for (int slot = pivot.first; slot < pivot.first + pivot.degree; ++slot) {
            auto const s = as_index(slot);
            node_amps[as_index(plan_->later[s])] += siemens_[s] * share;
        }
    }
    for (int root : plan_->roots)
        node_amps[as_index(root)] = Real(0);
    for (; step-- > 0;) { // from here on an entry holds volts once its turn has come
        Pivot const& pivot = plan_->pivots[step];
        Real sum = node_amps[as_index(pivot.node)];
        for (int slot = pivot.first; slot < pivot.first + pivot.degree; ++slot) {
            auto const s = as_index(slot);
            sum += siemens_[s] * node_amps[as_index(plan_->later[s])];
        }
        node_amps[as_index(pivot.node)] = sum * ohms_[step];
    }
    return node_amps;
}

} // namespace bankwright::solver
