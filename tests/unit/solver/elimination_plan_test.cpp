#include "bankwright/solver/linear/elimination_plan.hpp"
#include "bankwright/solver/linear/star_mesh.hpp"

#include <algorithm>
#include <memory>

#include <doctest/doctest.h>

using namespace bankwright::solver;

TEST_CASE("a chain is eliminated from its end without any fill") {
    EliminationPlan const plan = plan_elimination(5, {{0, 1}, {1, 2}, {2, 3}, {3, 4}}, {0});
    CHECK(plan.pivots.size() == 4);
    CHECK(plan.slots() == 4);
    CHECK(plan.pairs.empty());
}

TEST_CASE("a star rooted at a leaf takes its hub last") {
    EliminationPlan const plan = plan_elimination(6, {{0, 5}, {1, 5}, {2, 5}, {3, 5}, {4, 5}}, {0});
    CHECK(plan.pivots.back().node == 5);
    CHECK(plan.pairs.empty());
}

TEST_CASE("a ring of five needs two pairs before only the root is left") {
    EliminationPlan const plan = plan_elimination(5, {{0, 1}, {1, 2}, {2, 3}, {3, 4}, {4, 0}}, {0});
    CHECK(plan.pairs.size() == 3); // the third falls between the last node and the root, where there is a line
    CHECK(plan.slots() == 7);
}

TEST_CASE("lines find their slots, backwards where they run from the later node to the earlier") {
    std::vector<Line> const lines{{0, 1}, {1, 0}, {2, 1}, {1, 2}};
    EliminationPlan const plan = plan_elimination(3, lines, {0});
    CHECK(plan.slot[0] == plan.slot[1]);
    CHECK(plan.slot[2] == plan.slot[3]);
    CHECK(plan.backwards[0] != plan.backwards[1]);
    CHECK(plan.backwards[2] != plan.backwards[3]);
}

TEST_CASE("every pair falls into a slot of a later pivot") {
    std::vector<Line> lines;
    for (int a = 0; a < 12; ++a)
        for (int b = 0; b < a; ++b)
            if ((a * 7 + b * 5) % 3 == 0 || b == a - 1) lines.push_back({a, b});
    EliminationPlan const plan = plan_elimination(12, lines, {4});
    for (std::size_t p = 0; p < plan.pivots.size(); ++p) {
        Pivot const& pivot = plan.pivots[p];
        for (int k = 0; k < pivot.degree * (pivot.degree - 1) / 2; ++k)
            CHECK(plan.pairs[static_cast<std::size_t>(pivot.pair_first + k)] >= pivot.first + pivot.degree);
    }
}

TEST_CASE("a delta of three ohms each seen from one corner is two thirds of that") {
    std::vector<Line> const lines{{0, 1}, {1, 2}, {2, 0}};
    auto const plan = std::make_shared<EliminationPlan const>(plan_elimination(3, lines, {0}));
    StarMesh const mesh(plan, {1.0 / 3.0, 1.0 / 3.0, 1.0 / 3.0});
    CHECK(mesh.volts_of_injections({0.0, 1.0, 0.0})[1] == doctest::Approx(2.0).epsilon(1e-15));
    CHECK(mesh.volts_of_injections({0.0, 1.0, 0.0})[2] == doctest::Approx(1.0).epsilon(1e-15));
    CHECK(mesh.volts({1.0, 0.0, 0.0})[1] == doctest::Approx(2.0).epsilon(1e-15));
}
