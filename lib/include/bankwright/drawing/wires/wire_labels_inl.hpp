#pragma once

#include "bankwright/drawing/wires/wire_labels.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <numeric>

namespace bankwright::drawing {

namespace internal {

class LabelPlacer {
public:
    LabelPlacer(Drawing const& drawing, std::vector<LabelSize> const& sizes)
        : drawing_(drawing), sizes_(sizes), placed_(drawing.wires.size()) {}

    std::vector<std::optional<LabelPlace>> place() {
        for (std::size_t w = 0; w < drawing_.wires.size(); ++w)
            for (std::size_t i = 0; i + 1 < path(w).size(); ++i)
                lines_.push_back({w, around(path(w)[i], path(w)[i + 1], 5.0)});
        std::vector<std::size_t> order(drawing_.wires.size());
        std::iota(order.begin(), order.end(), std::size_t{0});
        // First those whose room is kept, then the short ones: they have least choice.
        std::stable_sort(order.begin(), order.end(), [&](auto a, auto b) {
            auto const kept_a = drawing_.wires[a].label_room.has_value(),
                       kept_b = drawing_.wires[b].label_room.has_value();
            return kept_a != kept_b ? kept_a : length(a) < length(b);
        });
        for (auto const w : order) {
            placed_[w] = best(w);
            if (placed_[w]) labels_.push_back(placed_[w]->box);
        }
        return placed_;
    }

private:
    struct Line {
        std::size_t wire;
        Box box;
    };
    static constexpr double gap = 1.5;   // between labels
    static constexpr double step = 13.0; // between the places that are tried

    std::vector<Point> const& path(std::size_t w) const { return drawing_.wires[w].path; }
    double length(std::size_t w) const {
        double sum = 0.0;
        for (std::size_t i = 0; i + 1 < path(w).size(); ++i)
            sum += std::abs(path(w)[i + 1].x - path(w)[i].x) + std::abs(path(w)[i + 1].y - path(w)[i].y);
        return sum;
    }

    std::optional<LabelPlace> best(std::size_t w) const {
        std::optional<LabelPlace> chosen;
        double lowest = std::numeric_limits<double>::infinity();
        auto const consider = [&](Point middle, Point a, Point b, double cost) {
            bool const upright = a.x == b.x && a.y != b.y;
            auto const width = upright ? sizes_[w].height : sizes_[w].width;
            auto const height = upright ? sizes_[w].width : sizes_[w].height;
            Box const box{middle.x - width / 2.0, middle.y - height / 2.0, width, height};
            if (upright) cost += 30.0;
            cost += overhang(box, a, b) * 2.0;
            if (cost >= lowest || !is_free(box)) return;
            cost += 150.0 * crossed(box, w);
            if (cost >= lowest) return;
            lowest = cost;
            auto const sign = [](double d) { return d > 0.0 ? 1.0 : d < 0.0 ? -1.0 : 0.0; };
            chosen = LabelPlace{box, upright, {sign(b.x - a.x), sign(b.y - a.y)}};
        };
        auto const& points = path(w);
        for (std::size_t i = 0; i + 1 < points.size(); ++i) {
            auto const a = points[i], b = points[i + 1];
            if (auto const& room = drawing_.wires[w].label_room; room && a.y == b.y && a.y == room->center().y &&
                                                                 std::max(a.x, b.x) > room->center().x &&
                                                                 std::min(a.x, b.x) < room->center().x)
                consider({room->right() - sizes_[w].width / 2.0, a.y}, a, b, -500.0);
            auto const span = std::max(std::abs(b.x - a.x), std::abs(b.y - a.y));
            auto const places = std::min(60, static_cast<int>(span / step) + 1);
            for (int k = 0; k <= 2 * places; ++k) {
                auto const t = k / (2.0 * places);
                consider({a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t}, a, b, 20.0 * std::abs(t - 0.5));
            }
        }
        return chosen;
    }

    // How far the label reaches beyond the ends of its line.
    static double overhang(Box const& box, Point a, Point b) {
        if (a.x == b.x)
            return std::max(0.0, std::min(a.y, b.y) - box.y) + std::max(0.0, box.bottom() - std::max(a.y, b.y));
        return std::max(0.0, std::min(a.x, b.x) - box.x) + std::max(0.0, box.right() - std::max(a.x, b.x));
    }

    bool is_free(Box const& box) const {
        if (box.x < 2.0 || box.y < 2.0 || box.right() > drawing_.width - 2.0 || box.bottom() > drawing_.height - 2.0)
            return false;
        Box const wide{box.x - gap, box.y - gap, box.width + 2.0 * gap, box.height + 2.0 * gap};
        for (auto const& label : labels_)
            if (overlap(wide, label)) return false;
        for (auto const& part : drawing_.parts)
            if (overlap(box, part.box)) return false;
        return true;
    }

    // Stretches of other conductors that would lie under it.
    int crossed(Box const& box, std::size_t w) const {
        return static_cast<int>(std::count_if(
            lines_.begin(), lines_.end(), [&](Line const& line) { return line.wire != w && overlap(line.box, box); }));
    }

    Drawing const& drawing_;
    std::vector<LabelSize> const& sizes_;
    std::vector<Line> lines_;
    std::vector<Box> labels_;
    std::vector<std::optional<LabelPlace>> placed_;
};

} // namespace internal

BANKWRIGHT_INLINE std::vector<std::optional<LabelPlace>> place_labels(Drawing const& drawing,
                                                                      std::vector<LabelSize> const& sizes) {
    return internal::LabelPlacer(drawing, sizes).place();
}

} // namespace bankwright::drawing
