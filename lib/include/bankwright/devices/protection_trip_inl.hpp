// Bodies of protection_trip.hpp.
#pragma once

#include "bankwright/devices/protection_trip.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/tables/protection.hpp"

#include <limits>
#include <span>
#include <string>

namespace bankwright {

namespace internal::trip_points {

using Point = tables::protection::TripPoint;

struct Curve {
    std::span<Point const> points;
    Source source;
};

inline Curve curve_of(TripClass trip_class) {
    namespace t = tables::protection;
    switch (trip_class) {
    case TripClass::ul_489:
        return {t::ul_489, t::ul_489_source};
    case TripClass::iec_60898_b:
        return {t::iec_60898_b, t::iec_60898_b_source};
    case TripClass::iec_60898_c:
        return {t::iec_60898_c, t::iec_60898_c_source};
    case TripClass::iec_60898_d:
        return {t::iec_60898_d, t::iec_60898_d_source};
    case TripClass::iso_8820_3:
        return {t::iso_8820_3, t::iso_8820_3_source};
    case TripClass::iso_8820_5:
        return {t::iso_8820_5, t::iso_8820_5_source};
    case TripClass::sae_j554:
        break;
    }
    return {t::sae_j554, t::sae_j554_source};
}

// The points of the smallest rating class that holds the rating: they stand together, by rising multiple.
inline std::span<Point const> for_rating(std::span<Point const> points, double rating) {
    std::size_t begin = 0;
    while (begin + 1 < points.size() && rating > points[begin].rating_up_to)
        ++begin;
    auto end = begin;
    while (end < points.size() && points[end].rating_up_to == points[begin].rating_up_to)
        ++end;
    return points.subspan(begin, end - begin);
}

} // namespace internal::trip_points

BANKWRIGHT_INLINE std::optional<TripClass> trip_class_named(std::string_view text) {
    std::string plain;
    for (char c : text)
        plain += c == '_' || c == ' ' ? '-' : c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    for (std::size_t i = 0; i < trip_class_names.size(); ++i)
        if (trip_class_names[i] == plain) return static_cast<TripClass>(i);
    return std::nullopt;
}

BANKWRIGHT_INLINE std::optional<TripBand> trip_band(ProtectiveDevice const& device, Current current) {
    auto const known = device.trip_class ? trip_class_named(*device.trip_class) : std::nullopt;
    if (!known || !device.rating || !(device.rating->value() > 0.0)) return std::nullopt;
    auto const curve = internal::trip_points::curve_of(*known);
    auto const multiple = current.value() / device.rating->value();

    TripBand band{0.0 * si::second, std::numeric_limits<double>::infinity() * si::second, curve.source};
    for (auto const& point : internal::trip_points::for_rating(curve.points, device.rating->value())) {
        if (point.multiple <= multiple && point.at_most < band.at_most.value()) {
            band.at_most = point.at_most * si::second;
            band.source.confidence = point.mark;
        }
        if (point.multiple >= multiple && point.at_least > band.at_least.value())
            band.at_least = point.at_least * si::second;
    }
    return band;
}

inline bool is_fuse_class(TripClass trip_class) {
    return trip_class == TripClass::iso_8820_3 || trip_class == TripClass::iso_8820_5 ||
           trip_class == TripClass::sae_j554;
}

BANKWRIGHT_INLINE std::optional<LetThroughBound> let_through(ProtectiveDevice const& device, Current prospective) {
    auto const known = device.trip_class ? trip_class_named(*device.trip_class) : std::nullopt;
    if (!known || !device.rating) return std::nullopt;
    auto const points =
        internal::trip_points::for_rating(internal::trip_points::curve_of(*known).points, device.rating->value());
    auto const& last = points.back();
    if (last.at_most > 1.0 || prospective.value() < last.multiple * device.rating->value()) return std::nullopt;
    auto const band = trip_band(device, prospective);
    auto current = prospective;
    if (is_fuse_class(*known)) {
        // What melts a fuse is heat: the larger the current the less of it is lost on the way, so the I2t to melting
        // never grows with the current. The last point's is an upper bound for all above; arcing is not in it
        // [derived].
        current = last.multiple * *device.rating;
    }
    return LetThroughBound{current * current * band->at_most, band->source};
}

} // namespace bankwright
