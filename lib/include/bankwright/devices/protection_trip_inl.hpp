// Bodies of protection_trip.hpp.
#pragma once

#include "bankwright/devices/protection_trip.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/tables/protection.hpp"

#include <limits>
#include <optional>
#include <span>
#include <string>
#include <vector>

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
    case TripClass::iec_60934:
        return {t::iec_60934, t::iec_60934_source};
    case TripClass::sae_j553_1:
    case TripClass::sae_j553_2:
    case TripClass::sae_j553_3:
        return {t::sae_j553, t::sae_j553_source};
    case TripClass::iso_8820_3:
        return {t::iso_8820_3, t::iso_8820_3_source};
    case TripClass::iso_8820_3_c:
        return {t::iso_8820_3_c, t::iso_8820_3_c_source};
    case TripClass::iso_8820_3_e:
        return {t::iso_8820_3_e, t::iso_8820_3_e_source};
    case TripClass::iso_8820_3_f:
        return {t::iso_8820_3_f, t::iso_8820_3_f_source};
    case TripClass::iso_8820_4:
        return {t::iso_8820_4, t::iso_8820_4_source};
    case TripClass::iso_8820_5:
        return {t::iso_8820_5, t::iso_8820_5_source};
    case TripClass::iso_8820_6:
        return {t::iso_8820_6, t::iso_8820_6_source};
    case TripClass::ul_248_14:
        return {t::ul_248_14, t::ul_248_14_source};
    case TripClass::ul_248_15:
        return {t::ul_248_15, t::ul_248_15_source};
    case TripClass::iec_60127_sheet_1:
        return {t::iec_60127_sheet_1, t::iec_60127_sheet_1_source};
    case TripClass::iec_60127_sheet_2:
        return {t::iec_60127_sheet_2, t::iec_60127_sheet_2_source};
    case TripClass::iec_60127_sheet_3:
        return {t::iec_60127_sheet_3, t::iec_60127_sheet_3_source};
    case TripClass::iec_60127_sheet_5:
        return {t::iec_60127_sheet_5, t::iec_60127_sheet_5_source};
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

inline constexpr Source stated{"the device's own description", "`trips`", "as given", "stated"};

// The points of one device, by rising multiple, and where they come from. Empty where none are known.
struct Band {
    std::vector<Point> points;
    Source source;
    bool is_fuse = false; // what melts; of a band in the file it is not known
};

inline bool is_fuse(TripClass trip_class) { return trip_class >= TripClass::iso_8820_3; }

inline std::optional<Band> band_of(ProtectiveDevice const& device) {
    if (!device.rating || !(device.rating->value() > 0.0)) return std::nullopt;
    if (device.trips && !device.trips->empty()) {
        Band band{{}, stated};
        for (auto const& trip : *device.trips)
            band.points.push_back({std::numeric_limits<double>::infinity(), trip.multiple, trip.at_least.value(),
                                   trip.at_most.value(), stated.confidence});
        return band;
    }
    auto const known = device.trip_class ? trip_class_named(*device.trip_class) : std::nullopt;
    if (!known) return std::nullopt;
    auto const curve = curve_of(*known);
    auto const points = for_rating(curve.points, device.rating->value());
    return Band{{points.begin(), points.end()}, curve.source, is_fuse(*known)};
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

BANKWRIGHT_INLINE bool has_trip_band(ProtectiveDevice const& device) {
    return (device.trips && !device.trips->empty()) || (device.trip_class && trip_class_named(*device.trip_class));
}

BANKWRIGHT_INLINE std::optional<TripBand> trip_band(ProtectiveDevice const& device, Current current) {
    auto const known = internal::trip_points::band_of(device);
    if (!known) return std::nullopt;
    auto const multiple = current.value() / device.rating->value();

    TripBand band{0.0 * si::second, std::numeric_limits<double>::infinity() * si::second, known->source};
    for (auto const& point : known->points) {
        if (point.multiple <= multiple && point.at_most < band.at_most.value()) {
            band.at_most = point.at_most * si::second;
            band.source.confidence = point.mark;
        }
        if (point.multiple >= multiple && point.at_least > band.at_least.value())
            band.at_least = point.at_least * si::second;
    }
    return band;
}

BANKWRIGHT_INLINE std::optional<LetThroughBound> let_through(ProtectiveDevice const& device, Current prospective) {
    auto const known = internal::trip_points::band_of(device);
    if (!known) return std::nullopt;
    auto const& last = known->points.back();
    if (last.at_most > 1.0 || prospective.value() < last.multiple * device.rating->value()) return std::nullopt;
    auto const band = trip_band(device, prospective);
    auto current = prospective;
    if (known->is_fuse) {
        // What melts a fuse is heat: the larger the current the less of it is lost on the way, so the I2t to melting
        // never grows with the current. The last point's is an upper bound for all above; arcing is not in it
        // [derived].
        current = last.multiple * *device.rating;
    }
    return LetThroughBound{current * current * band->at_most, band->source};
}

} // namespace bankwright
