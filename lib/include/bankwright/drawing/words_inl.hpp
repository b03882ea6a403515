#pragma once

#include "bankwright/drawing/words.hpp"
#include "bankwright/units/print.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace bankwright::drawing {

BANKWRIGHT_INLINE std::string with_signs(std::string printed) {
    auto const ends_in = [&](std::string_view end) {
        return printed.size() > end.size() && printed.compare(printed.size() - end.size(), end.size(), end) == 0;
    };
    if (ends_in("uohm"))
        printed.replace(printed.size() - 4, 4, "\u00b5\u03a9");
    else if (ends_in("ohm"))
        printed.replace(printed.size() - 3, 3, "\u03a9");
    else if (ends_in("mm2"))
        printed.replace(printed.size() - 1, 1, "\u00b2");
    return printed;
}

namespace internal {

template <class Q>
std::string and_then(std::optional<Q> const& value, std::string_view separator = " ") {
    return value ? std::string(separator) + with_signs(print(*value)) : std::string();
}

inline std::string without_blank(std::string text) {
    return text.substr(std::min(text.find_first_not_of(" ,"), text.size()));
}

} // namespace internal

BANKWRIGHT_INLINE std::string nameplate(Battery const& battery) {
    auto text = internal::and_then(battery.voltage);
    if (battery.chemistry) text += " " + std::string(label_name(*battery.chemistry));
    return internal::without_blank(text + internal::and_then(battery.capacity));
}
BANKWRIGHT_INLINE std::string nameplate(ProtectiveDevice const& device) {
    return internal::without_blank(internal::and_then(device.rating));
}
BANKWRIGHT_INLINE std::string nameplate(Switch const& one) {
    return internal::without_blank(internal::and_then(one.rating));
}
BANKWRIGHT_INLINE std::string nameplate(Shunt const& shunt) {
    if (!shunt.drop || !shunt.rating)
        return internal::without_blank(internal::and_then(shunt.rating) + internal::and_then(shunt.resistance));
    return internal::without_blank(internal::and_then(shunt.rating) + internal::and_then(shunt.drop));
}
BANKWRIGHT_INLINE std::string nameplate(Relay const& relay) {
    return internal::without_blank(internal::and_then(relay.rating) +
                                   internal::and_then(relay.closes_above, ", above "));
}
BANKWRIGHT_INLINE std::string nameplate(Selector const& selector) {
    constexpr std::string_view words[] = {"off", "on 1", "on 2", "on both"};
    auto const at = selector.position.value_or(SelectorPosition::first);
    return internal::without_blank(internal::and_then(selector.rating) + ", " +
                                   std::string(words[static_cast<std::size_t>(at)]));
}
BANKWRIGHT_INLINE std::string nameplate(Converter const& converter) {
    return internal::without_blank(internal::and_then(converter.voltage) + internal::and_then(converter.power));
}
BANKWRIGHT_INLINE std::string nameplate(Busbar const& busbar) {
    auto const studs = busbar.studs ? fmt::format("{} studs", *busbar.studs) : std::string();
    return internal::without_blank(studs + internal::and_then(busbar.rating, ", "));
}
BANKWRIGHT_INLINE std::string nameplate(Connector const& connector) {
    return internal::without_blank(internal::and_then(connector.rating));
}
BANKWRIGHT_INLINE std::string nameplate(Motor const& motor) {
    return internal::without_blank(internal::and_then(motor.voltage) + internal::and_then(motor.current));
}
BANKWRIGHT_INLINE std::string nameplate(Load const& load) {
    return internal::without_blank(internal::and_then(load.current) + internal::and_then(load.power) +
                                   internal::and_then(load.resistance));
}
BANKWRIGHT_INLINE std::string nameplate(Charger const& charger) {
    return internal::without_blank(internal::and_then(charger.voltage) + internal::and_then(charger.current) +
                                   (charger.connected.value_or(false) ? "" : ", off"));
}

namespace internal {

// At most three digits, no more than the length was measured with.
inline std::string in_unit(double value, std::string_view unit) {
    auto const digits = value < 9.995 ? 2 : value < 99.95 ? 1 : 0;
    auto text = fmt::format("{:.{}f}", value, digits);
    if (digits > 0) {
        text.erase(text.find_last_not_of('0') + 1);
        if (text.back() == '.') text.pop_back();
    }
    return text + " " + std::string(unit);
}

} // namespace internal

BANKWRIGHT_INLINE std::string size_and_length(Conductor const& conductor) {
    std::string text;
    if (conductor.size) text = with_signs(print(*conductor.size));
    if (conductor.length) {
        auto const meters = conductor.length->value();
        auto const inches = meters / 0.0254;
        auto const metric = !conductor.size || !conductor.size->gauge();
        text += text.empty() ? "" : " ";
        text += metric ? (meters < 1.0 ? internal::in_unit(meters * 100.0, "cm") : internal::in_unit(meters, "m"))
                : inches < 23.99 ? internal::in_unit(inches, "in")
                                 : internal::in_unit(inches / 12.0, "ft");
    }
    if (text.empty() && conductor.resistance) text = with_signs(print(*conductor.resistance));
    return text;
}

BANKWRIGHT_INLINE PartReading const* Readings::reading(std::string_view part) const {
    if (!any()) return nullptr;
    for (auto const& reading : point_->parts)
        if (reading.id == part) return &reading;
    return nullptr;
}

BANKWRIGHT_INLINE std::string Readings::volts_at(std::string_view terminal) const {
    if (!any()) return {};
    for (auto const& reading : point_->terminals)
        if (reading.name == terminal) return reading.voltage ? printed_volts(reading.voltage->value()) : std::string();
    return {};
}

BANKWRIGHT_INLINE std::optional<double> Readings::amperes(std::string_view part) const {
    auto const* found = reading(part);
    if (!found || !std::isfinite(found->current.value())) return std::nullopt;
    return found->current.value();
}

BANKWRIGHT_INLINE std::string Readings::volts_across(std::string_view part) const {
    auto const* found = reading(part);
    return found && std::isfinite(found->voltage.value()) ? printed_volts(found->voltage.value()) : std::string();
}

BANKWRIGHT_INLINE std::string printed_amperes(double amperes) {
    constexpr double rounding = 5e-5; // [A] less than any conductor of a boat carries
    auto const size = std::abs(amperes);
    if (size < rounding) return "0 A";
    return size < 0.9995  ? internal::in_unit(size * 1e3, "mA")
           : size < 999.5 ? internal::in_unit(size, "A")
                          : internal::in_unit(size / 1e3, "kA");
}

BANKWRIGHT_INLINE std::string printed_volts(double volts) {
    auto const size = std::abs(volts);
    if (size < 5e-5) return "0 V";
    if (size < 9.95e-3) return fmt::format("{:.1f} mV", volts * 1e3);
    if (size < 0.9995) return fmt::format("{:.0f} mV", volts * 1e3);
    return fmt::format("{:.{}f} V", volts, size < 99.995 ? 2 : 1);
}

} // namespace bankwright::drawing
