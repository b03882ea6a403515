// Published values against the library. The values, their sources and their tolerances are data: */cases.toml.
#include "standards/answers.hpp"
#include "standards/cases.hpp"

#include <cstdio>
#include <map>
#include <set>
#include <string>

#include <doctest/doctest.h>

namespace {
std::vector<standards::Case> published() { return standards::read_cases(BANKWRIGHT_SOURCE_DIR "/tests/standards"); }
} // namespace

TEST_CASE("the library agrees with what is published") {
    std::map<std::string, int> checked;
    for (auto const& one : published()) {
        auto const answer = standards::answer(one);
        auto const off = standards::deviation(one, answer);
        CHECK_MESSAGE(off.of_tolerance <= 1.0, one.describe(), " got ", answer);
        ++checked[one.kind];
    }
    CHECK(checked["devices"] >= 1000);
    CHECK(checked["circuits"] >= 150);
    CHECK(checked["sharing"] >= 120);
}

TEST_CASE("an answer that is off by more than its tolerance is noticed") {
    for (auto const& one : published()) {
        if (one.tolerance.away > 0.0) continue;
        auto const size = std::abs(one.value);
        auto const beyond =
            one.value + 1.001 * (one.tolerance.within + size * one.tolerance.above) + 1e-6 * (size + 1.0);
        CHECK(standards::deviation(one, beyond).of_tolerance > 1.0);
    }
}

TEST_CASE("the table of sources, values checked and worst deviation") {
    auto const cases = published();
    std::vector<standards::Deviation> off;
    std::set<std::string> sources;
    for (auto const& one : cases) {
        off.push_back(standards::deviation(one, standards::answer(one)));
        sources.insert(one.source);
    }
    std::printf("%s", standards::table(cases, off).c_str());
    CHECK(sources.size() >= 30);
}
