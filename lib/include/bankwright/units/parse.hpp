// What quantity does this text say? "36 V", "4.2 mohm", "5 ft 6 in", "77 degF", "90 %", "2/0 AWG", "16 mm2".
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/units/parsed.hpp"
#include "bankwright/units/parsing/unit_tables.hpp"
#include "bankwright/units/wire_gauge.hpp"

#include <optional>
#include <string_view>
#include <type_traits>

namespace bankwright {

namespace parsing {

Parsed<double> number_in(UnitTable const& table, std::string_view text); // in SI
Parsed<Temperature> temperature(std::string_view text);
Parsed<WireSize> wire_size(std::string_view text);

template <class Q>
struct FromSI {
    static Q make(double si) { return Q::from_value(si); }
};
template <class Meaning>
struct FromSI<Fraction<Meaning>> {
    static Fraction<Meaning> make(double si) { return Fraction<Meaning>::of(si); }
};

} // namespace parsing

template <class Q>
concept Readable = std::is_same_v<Q, WireSize> || requires {
    UnitsOf<Q>::table;
};

// A number with a point, then a unit; blanks between them are free; upper and lower case matter (mV, MV). Lengths and
// durations may be sums. The value is the double nearest to what was written. Ranges are the caller's business, but for
// what cannot be: a temperature below absolute zero, a wire without a cross-section, a gauge outside 4/0..30.
template <Readable Q>
Parsed<Q> parse(std::string_view text) {
    if constexpr (std::is_same_v<Q, Temperature>) {
        return parsing::temperature(text);
    } else if constexpr (std::is_same_v<Q, WireSize>) {
        return parsing::wire_size(text);
    } else {
        auto const number = parsing::number_in(UnitsOf<Q>::table, text);
        if (!number.value) return {std::nullopt, number.problem, number.unit_is_wrong};
        return {parsing::FromSI<Q>::make(*number.value), {}, false};
    }
}

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/units/parse_inl.hpp"
#endif
