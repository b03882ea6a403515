// AWG is a scale, not a unit: a gauge number and an area are two ways to say a conductor's size.
// Source: ASTM B258, d = 0.005 in x 92^((36-n)/39), n = 0 for 1/0, -1 for 2/0, ... (formula from memory; its diameters
// agree with two printed tables). SAE sizes bear the numbers of the gauges and hold 3 to 12 % less copper: SAE J1127
// and J1128, tables/sae_areas.hpp.
#pragma once

#include "bankwright/tables/sae_areas.hpp"
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

inline constexpr double circular_mil = 3.14159265358979323846 / 4.0 * 2.54e-5 * 2.54e-5; // [m2]

// 6 SAE is Sae{6}, numbered as the gauges are: 2/0 is Sae{-1}.
struct Sae {
    int number = 0;
    friend constexpr bool operator==(Sae, Sae) = default;
};

// The least copper of an SAE size; empty where SAE has no such size.
inline std::optional<Area> area(Sae size) {
    for (auto const& row : tables::sae_areas::least_area)
        if (row.gauge == size.number) return row.circular_mils * circular_mil * si::square_meter;
    return std::nullopt;
}

// The thinnest gauge, from 40 to 4/0, that holds at least so much copper: 16 mm2 is 5 AWG. Empty above 4/0.
inline std::optional<Awg> thinnest_gauge(Area least) {
    for (int number = 40; number >= -3; --number)
        if (area(Awg{number}) >= least) return Awg{number};
    return std::nullopt;
}

// A conductor's size as its author wrote it: a gauge, an SAE size, or a cross-section.
class WireSize {
public:
    WireSize() = default;
    WireSize(Awg gauge) : gauge_(gauge), area_(bankwright::area(gauge)) {}
    WireSize(Sae size) : gauge_(Awg{size.number}), area_(bankwright::area(size).value()), is_sae_(true) {} // throws
    WireSize(Area cross_section) : area_(cross_section) {}

    std::optional<Awg> gauge() const { return gauge_; } // or the SAE number; empty where the size was given as an area
    bool is_sae() const { return is_sae_; }
    Area area() const { return area_; }

    friend bool operator==(WireSize a, WireSize b) {
        return a.gauge_ == b.gauge_ && a.area_ == b.area_ && a.is_sae_ == b.is_sae_;
    }

private:
    std::optional<Awg> gauge_;
    Area area_{};
    bool is_sae_ = false;
};

} // namespace bankwright
