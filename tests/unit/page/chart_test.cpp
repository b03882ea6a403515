#include "bankwright/page/html/chart.hpp"

#include <cmath>
#include <cstdlib>
#include <string>

#include <doctest/doctest.h>

using namespace bankwright;

namespace {

// Every number of an attribute, in the order of the text.
std::vector<double> all(std::string const& svg, std::string const& attribute) {
    std::vector<double> found;
    auto const key = " " + attribute + "=\"";
    for (auto at = svg.find(key); at != std::string::npos; at = svg.find(key, at + 1))
        found.push_back(std::atof(svg.c_str() + at + key.size()));
    return found;
}

bool contains(std::string const& text, std::string const& part) { return text.find(part) != std::string::npos; }

} // namespace

TEST_CASE("ticks are round numbers that cover what is shown, no more of them than asked for") {
    CHECK(page::ticks(0.0, 52.1, 5) == std::vector<double>{0.0, 20.0, 40.0, 60.0});
    CHECK(page::ticks(0.0, 100.0, 5) == std::vector<double>{0.0, 20.0, 40.0, 60.0, 80.0, 100.0});
    CHECK(page::ticks(0.0, 0.0, 4).front() == 0.0);
    for (double const high : {1e-6, 0.037, 1.0, 3.0, 7.7, 99.0, 12345.0})
        for (double const low : {0.0, -0.4 * high, -3.0 * high}) {
            auto const at = page::ticks(low, high, 5);
            CHECK(at.front() <= low);
            CHECK(at.back() >= high * (1.0 - 1e-9));
            CHECK(at.size() <= 7u);
        }
}

TEST_CASE("a bar is as long as its value says") {
    page::BarChart chart;
    chart.title = "Currents";
    chart.axis = "current, A";
    chart.bars = {{"A", 10.0, "10 A", {}}, {"B", 20.0, "20 A", {}}, {"C", -5.0, "-5 A", {}}};
    auto const svg = page::to_svg(chart);
    std::vector<double> widths;
    for (auto at = svg.find("<rect"); at != std::string::npos; at = svg.find("<rect", at + 1))
        widths.push_back(all(svg.substr(at, svg.find("/>", at) - at), "width").at(0));
    REQUIRE(widths.size() == 3);
    CHECK(widths[1] == doctest::Approx(2.0 * widths[0]).epsilon(0.01));
    CHECK(widths[2] == doctest::Approx(0.5 * widths[0]).epsilon(0.01));
    CHECK(contains(svg, "role=\"img\" aria-label=\"Currents\""));
    CHECK(contains(svg, ">current, A<"));
    CHECK(contains(svg, ">-5 A<"));
}

TEST_CASE("curves that end at one place keep their labels apart") {
    page::CurveChart chart;
    for (auto const* label : {"A", "B", "C", "D"})
        chart.curves.push_back({label, {0.0, 60.0}, {100.0, 0.0}});
    auto const svg = page::to_svg(chart);
    std::vector<double> heights;
    for (auto const* label : {">A<", ">B<", ">C<", ">D<"}) {
        auto const end = svg.find(label);
        REQUIRE(end != std::string::npos);
        heights.push_back(all(svg.substr(svg.rfind("<text", end), 80), "y").at(0));
    }
    for (std::size_t i = 0; i < heights.size(); ++i)
        for (std::size_t j = i + 1; j < heights.size(); ++j)
            CHECK(std::abs(heights[i] - heights[j]) >= 16.9);
}

TEST_CASE("hostile labels are text, however long") {
    page::BarChart chart;
    chart.title = "<script>";
    chart.bars = {{std::string(10'000, 'J') + "<b>", 1.0, "1 A", {}}};
    auto const svg = page::to_svg(chart);
    CHECK_FALSE(contains(svg, "<script"));
    CHECK_FALSE(contains(svg, "<b>"));
    CHECK(svg.size() < 5'000u);
}
