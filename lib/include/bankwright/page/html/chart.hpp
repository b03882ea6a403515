// Numbers as pictures: bars and curves with axes, units and a label at each, as SVG. Made for a phone: 360 px wide.
#pragma once

#include "bankwright/linkage.hpp"

#include <optional>
#include <string>
#include <vector>

namespace bankwright::page {

struct Bar {
    std::string label;
    double value = 0.0;
    std::string words;           // the value as people read it, with its unit
    std::optional<double> limit; // marked on the bar; one that is beyond it is drawn so
};

struct BarChart {
    std::string title; // for those who cannot see it
    std::string axis;  // "current, A"
    std::vector<Bar> bars;
    std::optional<double> mark; // a line across all bars
    std::string mark_words;
};

struct Curve {
    std::string label;
    std::vector<double> x;
    std::vector<double> y; // as many
};

struct CurveChart {
    std::string title;
    std::string x_axis;
    std::string y_axis;
    double x_least = 0.0;
    double y_most = 100.0;
    std::vector<Curve> curves;
    std::optional<double> mark; // a line at that x
    std::string mark_words;
};

std::string to_svg(BarChart const& chart);
std::string to_svg(CurveChart const& chart);

// Round numbers from `low` to `high`, both covered, in at most `most` steps.
std::vector<double> ticks(double low, double high, int most);

} // namespace bankwright::page

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/page/html/chart_inl.hpp"
#endif
