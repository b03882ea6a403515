#pragma once

#include "bankwright/text/escape.hpp"
#include "bankwright/text/parse_number.hpp"
#include "bankwright/units/dimensions.hpp"
#include "bankwright/units/parse.hpp"
#include "bankwright/units/print.hpp"

#include <array>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace bankwright {
namespace internal::measuring {

inline constexpr double most = 10.0; // [m] far above any battery: it catches a slipped unit

inline std::vector<std::string> sides_of(std::string_view text) {
    std::vector<std::string> sides(1);
    for (std::size_t i = 0; i < text.size(); ++i) {
        bool const is_sign = text.substr(i, 2) == "\u00D7";
        if (text[i] == 'x' || is_sign)
            sides.emplace_back();
        else
            sides.back() += text[i];
        i += is_sign ? 1 : 0;
    }
    return sides;
}

// Nothing but a number: what stands behind it is blank.
inline bool lacks_unit(std::string_view side) {
    while (!side.empty() && side.front() == ' ')
        side.remove_prefix(1);
    return parse_number(side) && side.find_first_not_of(' ') == std::string_view::npos;
}

// What stands behind the last digit or point.
inline std::string unit_of(std::string const& side) {
    auto const end = side.find_last_of("0123456789.");
    return end == std::string::npos ? std::string() : side.substr(end + 1);
}

} // namespace internal::measuring

BANKWRIGHT_INLINE Parsed<Dimensions> parse_dimensions(std::string_view text) {
    using namespace internal::measuring;
    auto const refuse = [&](bool unit_is_wrong, std::string const& why) {
        return Parsed<Dimensions>{std::nullopt,
                                  fmt::format("`{}`, expected length, width and height such as `330 x 173 x 240 mm`{}",
                                              terminal_safe(text), why),
                                  unit_is_wrong};
    };
    auto sides = sides_of(text);
    if (sides.size() != 3) return refuse(false, {});
    std::array<Length, 3> lengths{};
    for (std::size_t i = 0; i < 3; ++i) {
        if (i < 2 && lacks_unit(sides[i])) sides[i] += unit_of(sides[2]);
        auto const parsed = parse<Length>(sides[i]);
        if (!parsed.value) return refuse(parsed.unit_is_wrong, {});
        lengths[i] = *parsed.value;
        if (!(lengths[i].value() > 0.0 && lengths[i].value() <= most))
            return refuse(false, ", each more than 0 m, at most 10 m");
    }
    return {Dimensions{lengths[0], lengths[1], lengths[2]}, {}, false};
}

// In one unit where that is exact, the shorter of the two; elsewhere each side in its own.
BANKWRIGHT_INLINE std::string print_exact(Dimensions const& size) {
    std::string shortest;
    auto const offer = [&](std::string_view unit, double meters) {
        auto text = fmt::format("{:.15g} x {:.15g} x {:.15g} {}", size.length.value() / meters,
                                size.width.value() / meters, size.height.value() / meters, unit);
        if (parse_dimensions(text).value == size && (shortest.empty() || text.size() < shortest.size()))
            shortest = std::move(text);
    };
    offer("mm", 1e-3);
    offer("in", 0.0254);
    if (!shortest.empty()) return shortest;
    return fmt::format("{} x {} x {}", print_exact(size.length), print_exact(size.width), print_exact(size.height));
}

BANKWRIGHT_INLINE std::string print(Dimensions const& size) {
    auto const mm = [](Length side) { return 1e3 * side.value(); };
    return fmt::format("{:.0f} x {:.0f} x {:.0f} mm", mm(size.length), mm(size.width), mm(size.height));
}

} // namespace bankwright
