// Bodies of chart.hpp.
#pragma once

#include "bankwright/drawing/pen.hpp"
#include "bankwright/drawing/text_fit.hpp"
#include "bankwright/page/html/chart.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>
#include <string_view>
#include <utility>

#include <fmt/format.h>

namespace bankwright::page {

namespace internal::chart_look {
inline constexpr double width = 360.0;
inline constexpr double side = 12.0; // left and right
inline constexpr double words = 14.0;
inline constexpr double small = 13.0;
inline constexpr double line = 17.0; // from one label to the next
} // namespace internal::chart_look

namespace internal {

inline std::string tick_words(double value) { return fmt::format("{:g}", std::abs(value) < 1e-12 ? 0.0 : value); }

inline std::string framed(drawing::Pen&& pen, double height, std::string_view title) {
    XmlWriter svg;
    svg.open("svg").attribute("xmlns", "http://www.w3.org/2000/svg");
    svg.attribute("viewBox",
                  fmt::format("0 0 {} {}", drawing::coordinate(chart_look::width), drawing::coordinate(height)));
    svg.attribute("role", "img").attribute("aria-label", title).attribute("font-family", drawing::typeface);
    svg.markup(std::move(pen.xml()).str());
    return std::move(svg).str();
}

// Each as near to where it belongs as may be, none nearer than `pitch` to the next, all between low and high.
inline std::vector<double> apart(std::vector<double> const& wanted, double pitch, double low, double high) {
    std::vector<std::size_t> order(wanted.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](auto a, auto b) { return wanted[a] < wanted[b]; });
    auto placed = wanted;
    double least = low;
    for (auto const i : order) {
        placed[i] = std::max(placed[i], least);
        least = placed[i] + pitch;
    }
    double most = high;
    for (auto i = order.rbegin(); i != order.rend(); ++i) {
        placed[*i] = std::min(placed[*i], most);
        most = placed[*i] - pitch;
    }
    return placed;
}

} // namespace internal

BANKWRIGHT_INLINE std::vector<double> ticks(double low, double high, int most) {
    if (!(high > low)) high = low + 1.0;
    auto const rough = (high - low) / most;
    auto const decade = std::pow(10.0, std::floor(std::log10(rough)));
    auto step = decade;
    for (double const factor : {1.0, 2.0, 5.0, 10.0})
        if (step = factor * decade; step >= rough * (1.0 - 1e-9)) break;
    std::vector<double> at;
    for (auto n = std::llround(std::floor(low / step + 1e-9)); static_cast<double>(n) < high / step + 1.0 - 1e-9; ++n)
        at.push_back(static_cast<double>(n) * step);
    return at;
}

BANKWRIGHT_INLINE std::string to_svg(BarChart const& chart) {
    using namespace drawing;
    namespace look = internal::chart_look;
    constexpr double pitch = 42.0;
    double low = 0.0, high = chart.mark.value_or(0.0);
    for (auto const& bar : chart.bars) {
        low = std::min(low, bar.value);
        high = std::max(high, bar.value);
    }
    auto const at = ticks(low, high, 5);
    auto const scale = (look::width - 2.0 * look::side) / (at.back() - at.front());
    auto const x = [&](double value) { return look::side + (value - at.front()) * scale; };

    Pen pen("chart");
    double y = 6.0;
    auto const top = y;
    if (chart.mark) y += look::line + 4.0;
    auto const floor = y + pitch * static_cast<double>(chart.bars.size()) + 6.0;
    for (auto const& bar : chart.bars) {
        bool const beyond = bar.limit && std::abs(bar.value) > *bar.limit;
        auto const right = look::width - look::side;
        auto const words = fitted(bar.words, 200.0, look::words);
        auto const room = right - look::side - text_width(words, look::words) - 10.0;
        pen.text({look::side, y + 15.0}, fitted(bar.label, room, look::words, true),
                 {.size = look::words, .bold = true});
        pen.text({right, y + 15.0}, words, {.size = look::words, .anchor = Anchor::end});
        for (auto const tick : at)
            pen.line({{x(tick), y + 20.0}, {x(tick), y + 37.0}}, {"#c8c8c8", 1.0});
        auto const from = std::min(x(0.0), x(bar.value)), to = std::max(x(0.0), x(bar.value));
        auto const fill = bar.value < 0.0 ? ink::paper : beyond ? ink::error : ink::between;
        pen.box({from, y + 21.0, std::max(to - from, 1.0), 15.0}, {beyond ? ink::error : ink::text, 1.5, {}, fill});
        pen.line({{x(0.0), y + 18.0}, {x(0.0), y + 39.0}}, {ink::text, 2.0});
        if (chart.mark) pen.line({{x(*chart.mark), y + 18.0}, {x(*chart.mark), y + 39.0}}, {ink::text, 2.0, "4 3"});
        if (bar.limit && *bar.limit <= at.back())
            pen.line({{x(*bar.limit), y + 18.0}, {x(*bar.limit), y + 39.0}}, {ink::text, 3.0});
        y += pitch;
    }
    pen.line({{x(at.front()), floor}, {x(at.back()), floor}}, {ink::text, 2.0});
    for (auto const tick : at) {
        pen.line({{x(tick), floor}, {x(tick), floor + 5.0}}, {ink::text, 2.0});
        auto const anchor = tick == at.front() ? Anchor::start : tick == at.back() ? Anchor::end : Anchor::middle;
        auto const shift = tick == at.front() ? -4.0 : tick == at.back() ? 4.0 : 0.0;
        pen.text({x(tick) + shift, floor + 20.0}, internal::tick_words(tick), {.size = look::small, .anchor = anchor});
    }
    pen.text({look::width / 2.0, floor + 40.0}, chart.axis, {.size = look::small, .anchor = Anchor::middle});
    if (chart.mark) {
        pen.line({{x(*chart.mark), top + look::line - 3.0}, {x(*chart.mark), top + look::line + 3.0}},
                 {ink::text, 2.0});
        auto const words = fitted(chart.mark_words, look::width - 2.0 * look::side, look::small);
        auto const half = text_width(words, look::small) / 2.0;
        auto const middle = std::clamp(x(*chart.mark), look::side + half, look::width - look::side - half);
        pen.text({middle, top + 10.0}, words, {.size = look::small, .anchor = Anchor::middle});
    }
    return internal::framed(std::move(pen), floor + 50.0, chart.title);
}

BANKWRIGHT_INLINE std::string to_svg(CurveChart const& chart) {
    using namespace drawing;
    namespace look = internal::chart_look;
    constexpr double height = 300.0, top = 34.0, floor = height - 48.0, left = 48.0;
    constexpr std::array<std::string_view, 4> dashes{"", "10 4", "3 3", "12 4 3 4"};
    double last = chart.mark.value_or(0.0), widest = 20.0;
    for (auto const& curve : chart.curves) {
        if (!curve.x.empty()) last = std::max(last, curve.x.back());
        widest = std::max(widest, text_width(curve.label, look::words, true));
    }
    widest = std::min(widest, 96.0);
    auto const right = look::width - widest - 24.0;
    auto const at = ticks(chart.x_least, last, 4);
    auto const up = ticks(0.0, chart.y_most, 5);
    auto const x = [&](double value) {
        return left + (value - at.front()) / (at.back() - at.front()) * (right - left);
    };
    auto const y = [&](double value) { return floor - value / up.back() * (floor - top); };

    Pen pen("chart");
    pen.text({6.0, 16.0}, chart.y_axis, {.size = look::small});
    for (auto const tick : up) {
        pen.line({{left, y(tick)}, {right, y(tick)}}, {"#c8c8c8", 1.0});
        pen.text({left - 7.0, y(tick) + 4.5}, internal::tick_words(tick), {.size = look::small, .anchor = Anchor::end});
    }
    for (auto const tick : at) {
        pen.line({{x(tick), floor}, {x(tick), floor + 5.0}}, {ink::text, 2.0});
        pen.text({x(tick), floor + 20.0}, internal::tick_words(tick), {.size = look::small, .anchor = Anchor::middle});
    }
    pen.line({{left, top}, {left, floor}, {right, floor}}, {ink::text, 2.0});
    pen.text({(left + right) / 2.0, floor + 40.0}, chart.x_axis, {.size = look::small, .anchor = Anchor::middle});

    std::vector<double> ends;
    for (auto const& curve : chart.curves)
        ends.push_back(curve.y.empty() ? floor : y(curve.y.back()));
    auto const labels = internal::apart(ends, look::line, top + 6.0, floor - 2.0);
    for (std::size_t c = 0; c < chart.curves.size(); ++c) {
        auto const& curve = chart.curves[c];
        if (curve.x.empty()) continue;
        std::vector<Point> points;
        for (std::size_t i = 0; i < curve.x.size(); ++i)
            points.push_back({x(curve.x[i]), y(curve.y[i])});
        pen.line(points, {ink::text, 2.5, dashes[c % dashes.size()]});
        pen.circle(points.back(), 3.5, {{}, 0.0, {}, ink::text});
        pen.line({{points.back().x + 4.0, points.back().y}, {right + 12.0, labels[c]}}, {ink::faint, 1.0});
        pen.text({right + 15.0, labels[c] + 5.0}, fitted(curve.label, widest, look::words, true),
                 {.size = look::words, .bold = true});
    }
    if (chart.mark) {
        pen.line({{x(*chart.mark), top}, {x(*chart.mark), floor}}, {ink::error, 2.0, "6 4"});
        auto const words = fitted(chart.mark_words, right - left - 8.0, look::small);
        auto const width = text_width(words, look::small);
        bool const before = x(*chart.mark) - width - 6.0 > left;
        auto const from = before ? x(*chart.mark) - width - 5.0 : x(*chart.mark) + 5.0;
        pen.box({from - 2.0, floor - 24.0, width + 4.0, 18.0}, {{}, 0.0, {}, ink::paper});
        pen.text({before ? x(*chart.mark) - 5.0 : from, floor - 10.0}, words,
                 {.size = look::small, .anchor = before ? Anchor::end : Anchor::start});
    }
    return internal::framed(std::move(pen), height, chart.title);
}

} // namespace bankwright::page
