// AWG is a scale, not a unit: a gauge number and an area are two ways to say a conductor's size.
// Source: ASTM B258, d = 0.005 in x 92^((36-n)/39), n = 0 for 1/0, -1 for 2/0, ... (formula from memory; its diameters
// agree with two printed tables).
#pragma once

#include "bankwright/units/quantities.hpp"

#include <cmath>
#include <optional>

namespace bankwright {

// 6 AWG is Awg{6}; 1/0 is Awg{0}; 4/0 is Awg{-3}.
struct Awg {
    int number = 0;
    friend constexpr bool operator==(Awg, Awg) = default;
};

inline Length diameter(Awg gauge) { return 0.005 * 0.0254 * std::pow(92.0, (36.0 - gauge.number) / 39.0) * si::meter; }

inline Area area(Awg gauge) {
    auto const d = diameter(gauge);
    return 3.14159265358979323846 / 4.0 * d * d;
}

// A conductor's size as its author wrote it: a gauge, or a cross-section.
class WireSize {
public:
    WireSize() = default;
    WireSize(Awg gauge) : gauge_(gauge), area_(bankwright::area(gauge)) {}
    WireSize(Area cross_section) : area_(cross_section) {}

    std::optional<Awg> gauge() const { return gauge_; } // empty where the size was given as an area
    Area area() const { return area_; }

    friend bool operator==(WireSize a, WireSize b) { return a.gauge_ == b.gauge_ && a.area_ == b.area_; }

private:
    std::optional<Awg> gauge_;
    Area area_{};
};

} // namespace bankwright
