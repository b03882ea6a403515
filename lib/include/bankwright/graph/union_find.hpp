// Which things belong together? Disjoint sets with path halving; the lowest member stands for its set.
#pragma once

#include "bankwright/graph/as_index.hpp"

#include <numeric>
#include <utility>
#include <vector>

namespace bankwright::solver {

class UnionFind {
public:
    explicit UnionFind(int size) : parent_(as_index(size)) { std::iota(parent_.begin(), parent_.end(), 0); }

    int find(int i) {
        while (parent_[as_index(i)] != i) {
            int& up = parent_[as_index(i)];
            up = parent_[as_index(up)];
            i = up;
        }
        return i;
    }

    // True if the two were apart.
    bool unite(int i, int j) {
        i = find(i);
        j = find(j);
        if (i == j) return false;
        if (j < i) std::swap(i, j);
        parent_[as_index(j)] = i;
        return true;
    }

private:
    std::vector<int> parent_;
};

} // namespace bankwright::solver
