#include "bankwright/solver/topology.hpp"

#include <doctest/doctest.h>

using namespace bankwright::solver;

TEST_CASE("joined nodes become one, numbered by their lowest member") {
    Circuit const c{.nodes = 6, .joins = {{5, 1}, {3, 5}, {2, 2}, {1, 3}}};
    Topology const t = topology(c);
    CHECK(t.merged_nodes == 4);
    CHECK(t.merged == std::vector<int>{0, 1, 2, 1, 3, 1});
}

TEST_CASE("the reference's island is 0, the others follow in the order of their lowest nodes") {
    Circuit const c{.nodes = 7, .branches = {{0, 1, 1, 0}, {4, 5, 1, 0}}, .joins = {{5, 6}}, .reference = 6};
    Topology const t = topology(c);
    CHECK(t.island == std::vector<int>{1, 1, 2, 3, 0, 0, 0});
    REQUIRE(t.root.size() == 4);
    CHECK(t.root[0] == t.merged[6]);
    CHECK(t.root[1] == t.merged[0]);
    CHECK(t.root[3] == t.merged[3]);
}

TEST_CASE("a load connects nothing, and is a port only where branches and joins close its path") {
    Circuit const c{.nodes = 5,
                    .branches = {{0, 1, 1, 0}},
                    .joins = {{2, 3}},
                    .loads = {{1, 0, {}}, {1, 4, {}}, {2, 3, {}}, {2, 1, {}}}};
    Topology const t = topology(c);
    CHECK(t.load_feed == std::vector<Feed>{Feed::port, Feed::none, Feed::shorted, Feed::none});
    CHECK(t.load_line == std::vector<int>{1, -1, -1, -1});
    CHECK(t.island[4] != t.island[1]);
}

TEST_CASE("a branch whose ends are one node has no line") {
    Circuit const c{.nodes = 3, .branches = {{0, 1, 1, 0}, {1, 2, 1, 5}, {2, 2, 1, 1}}, .joins = {{1, 2}}};
    Topology const t = topology(c);
    CHECK(t.branch_line == std::vector<int>{0, -1, -1});
    CHECK(t.lines.size() == 1);
}
