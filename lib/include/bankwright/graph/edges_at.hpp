// Which edges of a graph end at a node? All lists lie side by side: two allocations, whatever the size.
#pragma once

#include "bankwright/graph/as_index.hpp"

#include <cstddef>
#include <span>
#include <utility>
#include <vector>

namespace bankwright::solver {

class EdgesAt {
public:
    // ends(e) gives the two nodes of edge e as a pair; a negative first one leaves the edge out. An edge from a node to
    // itself is listed twice.
    template <class Ends>
    EdgesAt(std::size_t nodes, std::size_t edges, Ends const& ends) : first_(nodes + 1, 0) {
        for (std::size_t e = 0; e < edges; ++e) {
            std::pair<int, int> const at = ends(e);
            if (at.first < 0) continue;
            ++first_[as_index(at.first)];
            ++first_[as_index(at.second)];
        }
        for (std::size_t n = 1; n <= nodes; ++n)
            first_[n] += first_[n - 1];
        edges_.resize(first_[nodes]);
        for (auto e = edges; e-- > 0;) { // from the last, so that each list is in the order of the numbers
            std::pair<int, int> const at = ends(e);
            if (at.first < 0) continue;
            edges_[--first_[as_index(at.first)]] = static_cast<int>(e);
            edges_[--first_[as_index(at.second)]] = static_cast<int>(e);
        }
    }

    // In the order of their numbers.
    std::span<int const> operator[](int node) const {
        auto const n = as_index(node);
        return {edges_.data() + first_[n], first_[n + 1] - first_[n]};
    }

private:
    std::vector<std::size_t> first_; // by node: where its list begins
    std::vector<int> edges_;
};

} // namespace bankwright::solver
