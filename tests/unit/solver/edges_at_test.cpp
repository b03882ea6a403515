#include "bankwright/graph/edges_at.hpp"

#include <utility>
#include <vector>

#include <doctest/doctest.h>

using bankwright::solver::EdgesAt;

TEST_CASE("each node lists its edges in the order of their numbers") {
    std::vector<std::pair<int, int>> const ends{{0, 1}, {2, 1}, {-1, -1}, {1, 0}, {3, 3}};
    EdgesAt const edges(5, ends.size(), [&](std::size_t e) { return ends[e]; });
    auto const at = [&](int node) { return std::vector<int>(edges[node].begin(), edges[node].end()); };
    CHECK(at(0) == std::vector<int>{0, 3});
    CHECK(at(1) == std::vector<int>{0, 1, 3});
    CHECK(at(2) == std::vector<int>{1});
    CHECK(at(3) == std::vector<int>{4, 4}); // from the node to itself
    CHECK(at(4).empty());
}

TEST_CASE("a graph without edges has empty lists, one without nodes none") {
    CHECK_NOTHROW(EdgesAt(0, 0, [](std::size_t) { return std::pair(-1, -1); }));
    EdgesAt const lonely(1, 0, [](std::size_t) { return std::pair(-1, -1); });
    CHECK(lonely[0].empty());
}
