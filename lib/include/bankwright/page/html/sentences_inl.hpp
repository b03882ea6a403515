// Bodies of sentences.hpp.
#pragma once

#include "bankwright/drawing/words.hpp"
#include "bankwright/page/html/sentences.hpp"
#include "bankwright/units/print.hpp"

#include <array>
#include <cmath>
#include <utility>

#include <fmt/format.h>

namespace bankwright::page {

BANKWRIGHT_INLINE std::string sentence(std::string_view message) {
    auto text = with_unit_signs(std::string(message));
    if (text.empty()) return text;
    if (text.front() >= 'a' && text.front() <= 'z') text.front() = static_cast<char>(text.front() - 'a' + 'A');
    constexpr std::string_view ends = ".!?:";
    if (ends.find(text.back()) == std::string_view::npos) text += '.';
    return text;
}

BANKWRIGHT_INLINE std::vector<std::string> sentences(std::vector<std::string_view> const& messages) {
    std::vector<std::string> said;
    for (auto const message : messages)
        said.push_back(sentence(message));
    return said;
}

BANKWRIGHT_INLINE std::string file_name(std::string_view path) {
    return std::string(path.substr(path.find_last_of('/') + 1)); // npos + 1 is 0: the whole of it
}

BANKWRIGHT_INLINE std::string with_unit_signs(std::string text) {
    constexpr std::array<std::pair<std::string_view, std::string_view>, 7> signs{{{" mohm", " m\u03a9"},
                                                                                  {" uohm", " \u00b5\u03a9"},
                                                                                  {" ohm", " \u03a9"},
                                                                                  {" degC", " \u00b0C"},
                                                                                  {" degF", " \u00b0F"},
                                                                                  {" mm2", " mm\u00b2"},
                                                                                  {" A2s", " A\u00b2s"}}};
    for (auto const& [plain, sign] : signs)
        for (auto at = text.find(plain); at != std::string::npos; at = text.find(plain, at + 1)) {
            auto const after = at + plain.size();
            bool const ends =
                after == text.size() || std::string_view(" ,.;:/)").find(text[after]) != std::string_view::npos;
            if (ends) text.replace(at, plain.size(), sign);
        }
    return text;
}

BANKWRIGHT_INLINE std::string unbroken(std::string_view words) {
    std::string text;
    for (char const c : words)
        text += c == ' ' ? "\u00a0" : std::string(1, c);
    return text;
}

BANKWRIGHT_INLINE std::string all_of(std::vector<std::string> const& names) {
    std::string text;
    for (std::size_t i = 0; i < names.size(); ++i)
        text += (i == 0 ? "" : i + 1 == names.size() ? " and " : ", ") + names[i];
    return text;
}

BANKWRIGHT_INLINE std::string amperes(Current current) {
    auto const value = current.value();
    if (!std::isfinite(value)) return "unknown";
    auto const shown = drawing::printed_amperes(value);
    return value < 0.0 && shown != "0 A" ? "-" + shown : shown;
}

BANKWRIGHT_INLINE std::string volts(Voltage voltage) {
    return std::isfinite(voltage.value()) ? drawing::printed_volts(voltage.value()) : "unknown";
}

BANKWRIGHT_INLINE std::string watts(Power power) {
    if (!std::isfinite(power.value())) return "unknown";
    auto const value = power.value();
    if (std::abs(value) < 0.005) return "0 W";
    if (std::abs(value) < 0.995) return fmt::format("{:.2f} W", value);
    return std::abs(value) < 999.5 ? fmt::format("{:.3g} W", value) : fmt::format("{:.3g} kW", value / 1e3);
}

BANKWRIGHT_INLINE std::string milliohms(Resistance resistance) {
    return fmt::format("{:.3g} m\u03a9", resistance.value() * 1e3);
}

BANKWRIGHT_INLINE std::string seconds(Duration duration) {
    auto const value = duration.value();
    if (value < 1e-3) return "1 ms";
    if (value < 0.1) return fmt::format("{:.2g} ms", value * 1e3);
    return value < 10.0 ? fmt::format("{:.2g} s", value) : print(duration);
}

} // namespace bankwright::page
