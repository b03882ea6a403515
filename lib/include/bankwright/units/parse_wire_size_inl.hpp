// A conductor's size: a gauge of the AWG scale or a cross-section.
#pragma once

#include "bankwright/units/parse.hpp"
#include "bankwright/units/parse_faults_inl.hpp"

namespace bankwright::parsing {

inline constexpr UnitTable wire_size_units{"a wire size", "6 AWG\" or \"16 mm2", unit_tables::area};

// "6" is 6, "1/0" and "0" are 0, "2/0" and "00" are -1, ... None where the text is no gauge from 4/0 to 30.
inline std::optional<Awg> gauge_of(std::string_view number) {
    constexpr std::string_view zeros = "0000";
    if (!number.empty() && number.size() <= 4 && number == zeros.substr(0, number.size()))
        return Awg{1 - static_cast<int>(number.size())};
    if (number.size() == 3 && number.substr(1) == "/0" && number[0] >= '1' && number[0] <= '4')
        return Awg{1 - (number[0] - '0')};
    int gauge = 0;
    for (char const c : number) {
        if (c < '0' || c > '9' || gauge > 30) return std::nullopt;
        gauge = gauge * 10 + (c - '0');
    }
    if (number.empty() || number[0] == '0' || gauge > 30) return std::nullopt;
    return Awg{gauge};
}

BANKWRIGHT_INLINE Parsed<WireSize> wire_size(std::string_view text) {
    text = trimmed(text);
    auto const failed = [](Parsed<double> const& why) {
        return Parsed<WireSize>{std::nullopt, why.problem, why.unit_is_wrong};
    };
    auto const number = text.substr(0, text.find_first_not_of("0123456789/.+-"));
    auto const unit = without_blanks_before(text.substr(number.size()));
    if (!number.empty() && unit == "AWG") {
        if (auto const gauge = gauge_of(number)) return {WireSize(*gauge), {}, false};
        return failed(fault(wire_size_units, false, quoted(text) + " is no gauge from 4/0 to 30 AWG"));
    }
    if (!number.empty() && unit.empty()) return failed(fault(wire_size_units, true, quoted(text) + " has no unit"));
    if (!number.empty())
        for (std::string_view const word : {"AWG", "ga", "gauge", "AWG."})
            if (same_letters(unit, word)) {
                auto const meant =
                    fmt::format("{} has the unknown unit {} (did you mean `AWG`?)", quoted(text), quoted(unit));
                return failed(fault(wire_size_units, true, meant));
            }
    auto const area = number_in(wire_size_units, text);
    if (!area.value) return failed(area);
    if (!(*area.value > 0.0))
        return failed(fault(wire_size_units, false, quoted(text) + " is no cross-section above zero"));
    return {WireSize(Area::from_value(*area.value)), {}, false};
}

} // namespace bankwright::parsing
