// Bodies of linear_network.hpp.
#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/solver/linear/elimination_plan.hpp"
#include "bankwright/solver/linear_network.hpp"

#include <algorithm>
#include <utility>

namespace bankwright::solver {

BANKWRIGHT_INLINE LinearNetwork::LinearNetwork(Topology const& topology, std::vector<double> siemens,
                                               int star_mesh_limit, int factor_limit)
    : lines_(topology.lines), siemens_(std::move(siemens)), roots_(topology.root), nodes_(topology.merged_nodes),
      method_(chosen(topology, star_mesh_limit, factor_limit)) {}

BANKWRIGHT_INLINE LinearNetwork::Method LinearNetwork::chosen(Topology const& topology, int star_mesh_limit,
                                                              int factor_limit) const {
    if (nodes_ <= star_mesh_limit) return StarMesh(plan_of(topology), siemens_);
    if (nodes_ <= factor_limit) return factored();
    return PackNetwork(nodes_, lines_, siemens_, roots_);
}

BANKWRIGHT_INLINE std::vector<double> LinearNetwork::volts(std::vector<double> const& line_amps) const {
    if (auto const* mesh = std::get_if<StarMesh>(&method_)) return mesh->volts(line_amps);
    if (auto const* sparse = std::get_if<SparseNetwork>(&method_)) return sparse->volts(line_amps);
    auto found = std::get<PackNetwork>(method_).volts(line_amps);
    return found ? *std::move(found) : factored().volts(line_amps);
}

BANKWRIGHT_INLINE std::vector<double> LinearNetwork::rough_volts(std::vector<double> const& line_amps) const {
    if (auto const* pack = std::get_if<PackNetwork>(&method_))
        if (auto found = pack->rough_volts(line_amps)) return *std::move(found);
    return volts(line_amps);
}

BANKWRIGHT_INLINE std::vector<double> LinearNetwork::volts_of_injections(std::vector<double> const& node_amps,
                                                                         double enough) const {
    if (auto const* mesh = std::get_if<StarMesh>(&method_)) return mesh->volts_of_injections(node_amps);
    if (auto const* sparse = std::get_if<SparseNetwork>(&method_)) return sparse->volts_of_injections(node_amps);
    auto found = std::get<PackNetwork>(method_).volts_of_injections(node_amps, enough);
    return found ? *std::move(found) : factored().volts_of_injections(node_amps);
}

BANKWRIGHT_INLINE double LinearNetwork::condition() const {
    auto const count = as_index(nodes_);
    if (roots_.size() == count) return 1.0;
    std::vector<char> is_root(count, 0);
    for (int root : roots_)
        is_root[as_index(root)] = 1;
    std::vector<double> column(count, 0.0); // sums of absolute values
    for (std::size_t line = 0; line < lines_.size(); ++line) {
        auto const a = as_index(lines_[line].from);
        auto const b = as_index(lines_[line].to);
        column[a] += is_root[b] ? siemens_[line] : 2.0 * siemens_[line];
        column[b] += is_root[a] ? siemens_[line] : 2.0 * siemens_[line];
    }
    for (std::size_t n = 0; n < count; ++n)
        if (is_root[n]) column[n] = 0.0;
    auto const rows = volts_of_injections(std::vector<double>(count, 1.0), 1e-3);
    return *std::max_element(column.begin(), column.end()) * *std::max_element(rows.begin(), rows.end());
}

} // namespace bankwright::solver
