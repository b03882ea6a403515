// Bodies of conductor_resistance.hpp.
#pragma once

#include "bankwright/devices/conductor_resistance.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/tables/wire_resistance.hpp"

#include <cmath>
#include <stdexcept>

namespace bankwright {

BANKWRIGHT_INLINE ResistancePerLength copper_resistance(Area area, Temperature temperature) {
    auto const warm = 1.0 + copper_temperature_coefficient * (in_celsius(temperature) - 20.0);
    return ResistancePerLength::from_value(copper_resistivity * warm / area.value());
}

BANKWRIGHT_INLINE ResistancePerLength stranded_resistance(Area area, Temperature temperature) {
    return copper_resistance(area, temperature) * (1.0 + tables::wire_resistance::lay[0].share);
}

BANKWRIGHT_INLINE std::optional<Resistance> wire_resistance(Conductor const& conductor, Temperature copper) {
    if (conductor.resistance || !conductor.size || !conductor.length) return std::nullopt;
    auto const area = conductor.size->area();
    Resistance const plain = stranded_resistance(area, copper) * *conductor.length;
    return conductor.tinned.value_or(false) ? tinned_ratio(area) * plain : plain;
}

BANKWRIGHT_INLINE double tinned_ratio(Area area) {
    auto const mm2 = area.value() * 1e6;
    auto const times = [&](auto const& row) { // the greater over the smaller: the nearest by ratio
        return row.square_millimeters > mm2 ? row.square_millimeters / mm2 : mm2 / row.square_millimeters;
    };
    auto const* nearest = &tables::wire_resistance::class_5.front();
    for (auto const& row : tables::wire_resistance::class_5)
        if (times(row) < times(*nearest)) nearest = &row;
    return nearest->tinned / nearest->plain;
}

BANKWRIGHT_INLINE Resistance resistance(Conductor const& conductor, Temperature ambient, Resistance joint) {
    if (conductor.resistance) return *conductor.resistance;
    if (!conductor.size || !conductor.length)
        throw std::invalid_argument("conductor `" + conductor.id + "` needs `resistance`, or `size` and `length`");
    return *wire_resistance(conductor, conductor.temperature.value_or(ambient)) + 2.0 * conductor.joint.value_or(joint);
}

} // namespace bankwright
