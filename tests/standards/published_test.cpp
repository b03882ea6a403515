// Published values against the devices. The values, their sources and their tolerances are data: */cases.toml.
#include "standards/cases.hpp"
#include "standards/device_answers.hpp"

#include <doctest/doctest.h>

#include <cstdio>
#include <set>

namespace {
std::vector<standards::Case> device_cases() {
    return standards::read_cases(BANKWRIGHT_SOURCE_DIR "/tests/standards", "devices");
}
} // namespace

TEST_CASE("the devices agree with what is published") {
    auto const cases = device_cases();
    CHECK(cases.size() >= 800);
    for (auto const& one : cases) {
        auto const answer = standards::device_answer(one);
        auto const off = standards::deviation(one, answer);
        CHECK_MESSAGE(off.of_tolerance <= 1.0, one.describe(), " got ", answer);
    }
}

TEST_CASE("an answer that is off by more than its tolerance is noticed") {
    for (auto one : device_cases()) {
        if (one.tolerance.away > 0.0) continue;
        auto const size = std::abs(one.value);
        auto const beyond =
            one.value + 1.001 * (one.tolerance.within + size * one.tolerance.above) + 1e-6 * (size + 1.0);
        CHECK(standards::deviation(one, beyond).of_tolerance > 1.0);
    }
}

TEST_CASE("the table of sources, values checked and worst deviation") {
    auto const cases = device_cases();
    std::vector<standards::Deviation> off;
    std::set<std::string> sources;
    for (auto const& one : cases) {
        off.push_back(standards::deviation(one, standards::device_answer(one)));
        sources.insert(one.source);
    }
    std::printf("%s", standards::table(cases, off).c_str());
    CHECK(sources.size() >= 20);
}
