#include "bankwright/reports/solution_text.hpp"

#include <limits>

#include <doctest/doctest.h>

using namespace bankwright;

namespace {

bool contains(std::string const& text, std::string const& part) { return text.find(part) != std::string::npos; }

Solved solved() {
    Solved out;
    out.file = "x.toml";
    out.arrangement = "3S1P";
    out.point.status = solver::Status::solved;
    out.point.reference = "A-";
    out.point.terminals = {{"A+", 12.7096 * si::volt}, {"A-", 1e-15 * si::volt}, {"B+", std::nullopt}};
    out.point.parts = {{"A", PartKind::battery, 49.8 * si::ampere, 12.7096 * si::volt, 632.9 * si::watt},
                       {"J1", PartKind::jumper, 49.8 * si::ampere, 0.0199 * si::volt, 0.991 * si::watt},
                       {"CB", PartKind::breaker, 1e-14 * si::ampere,
                        std::numeric_limits<double>::quiet_NaN() * si::volt, 0.0 * si::watt}};
    return out;
}

} // namespace

TEST_CASE("terminals and parts stand in tables with units, lined up") {
    auto const text = solution_text(solved());
    CHECK(contains(text, "x.toml: 3S1P, solved\n\nagainst A-:\n\n"));
    CHECK(contains(text, "terminal   voltage\nA+         12.71 V\nA-             0 V\nB+        floating\n"));
    CHECK(contains(text, "part  kind     current  voltage    power\n"
                         "A     battery   49.8 A  12.71 V  632.9 W\n"
                         "J1    jumper    49.8 A  19.9 mV   991 mW\n"));
}

TEST_CASE("rounding that flows nowhere reads as nothing, and what has no voltage says so") {
    auto const text = solution_text(solved());
    CHECK(contains(text, "CB    breaker      0 A  unknown      0 W\n"));
}

TEST_CASE("a solution of a bank that check complains about says so") {
    auto bad = solved();
    CHECK_FALSE(contains(solution_text(bad), "bankwright check"));
    bad.counts.error = 2;
    CHECK(contains(solution_text(bad), "`bankwright check x.toml` finds 2 errors in this bank"));
}

TEST_CASE("without an operating point there are no tables but the reason") {
    Solved none;
    none.file = "x.toml";
    none.text = "lamp = {}\n";
    none.point.status = solver::Status::no_operating_point;
    none.findings.push_back({.rule = "solve/no-solution",
                             .message = "no operating point",
                             .help = "a smaller load",
                             .region = Region{{1, 1}, {1, 5}}});
    auto const text = solution_text(none);
    CHECK(contains(text, "x.toml: no-operating-point\n"));
    CHECK(contains(text, "x.toml:1:1: error: no operating point [solve/no-solution]\n 1 | lamp = {}\n   | ^~~~\n  "
                         "help: a smaller load\n"));
    CHECK_FALSE(contains(text, "terminal"));
}
