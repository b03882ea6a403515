// Lines, shapes and words of a drawing as SVG elements. No style sheet: every element says itself how it looks, so that
// a drawing stands alone and does not meddle with the page that it is put into.
#pragma once

#include "bankwright/drawing/drawing.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/text/xml_writer.hpp"

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace bankwright::drawing {

// Dark and light enough against each other to be told apart in gray; red and black are the trade's + and -.
namespace ink {
inline constexpr std::string_view paper = "#ffffff";
inline constexpr std::string_view text = "#1b1b1b";
inline constexpr std::string_view faint = "#5a5a5a";
inline constexpr std::string_view outline = "#3a3a3a";
inline constexpr std::string_view case_fill = "#f1f1ec";
inline constexpr std::string_view ground = "#f7f8fa"; // behind the batteries
inline constexpr std::string_view positive = "#c4161c";
inline constexpr std::string_view negative = "#111111";
inline constexpr std::string_view between = "#5f6f86";
inline constexpr std::string_view fault = "#ff9d00";
inline constexpr std::string_view error = "#a4001d";
inline constexpr std::string_view warning = "#ffc533";
inline constexpr std::string_view note = "#1f4e8c";
} // namespace ink

// Broad faces first: text is measured by them (text_fit.hpp).
inline constexpr std::string_view typeface = "'DejaVu Sans', Verdana, Arial, Helvetica, sans-serif";

enum class Anchor { start, middle, end };

struct TextLook {
    double size = 10.0;
    bool bold = false;
    Anchor anchor = Anchor::start;
    std::string_view fill = ink::text;
};

struct LineLook {
    std::string_view stroke = ink::outline;
    double width = 1.5;
    std::string_view dashes = {};
    std::string_view fill = "none";
};

// "12.5": to a tenth of a pixel.
std::string coordinate(double value);

class Pen {
public:
    explicit Pen(std::string prefix) : prefix_(std::move(prefix)) {}

    XmlWriter& xml() { return xml_; }
    std::string named(std::string_view name) const { return prefix_ + "-" + std::string(name); }

    // A group for one thing, with what a person sees who rests on it. Closed by close().
    void open_group(std::string_view kind, std::string_view title);
    void close() { xml_.close(); }

    void text(Point at, std::string_view words, TextLook const& look = {});
    void box(Box const& box, LineLook const& look, double corner = 0.0);
    void circle(Point middle, double radius, LineLook const& look);
    void line(std::vector<Point> const& points, LineLook const& look);
    void shape(std::vector<Point> const& corners, LineLook const& look); // closed
    void path(std::string_view commands, LineLook const& look);

private:
    void apply(LineLook const& look);

    std::string prefix_;
    XmlWriter xml_;
};

} // namespace bankwright::drawing

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/drawing/pen_inl.hpp"
#endif
