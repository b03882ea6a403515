// A quantity as text: print() for people, print_exact() for files.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/units/parse.hpp"

#include <string>

namespace bankwright {

namespace printing {

std::string people(UnitTable const& table, double si);
std::string people(Temperature value);
std::string people(WireSize value);
std::string exact(UnitTable const& table, double si);
std::string exact(Temperature value);
std::string exact(WireSize value);

} // namespace printing

// Four significant digits at most, trailing zeros dropped, in the unit that people use: "12.71 V", "4.2 mohm", "1.36
// kA", "100 Ah", "2.5 m", "4 mm", "12 in", "17 ft", "3 h 12 min", "25 degC", "90 %", "2/0 AWG", "16 mm2". ASCII only.
template <Readable Q>
std::string print(Q const& value) {
    if constexpr (std::is_same_v<Q, Temperature> || std::is_same_v<Q, WireSize>)
        return printing::people(value);
    else
        return printing::people(UnitsOf<Q>::table, value.value());
}

// A short text that parse() reads back as the same value to the last bit, -0 included. None for an infinity,
// a NaN or a temperature below absolute zero: parse() refuses what they print as.
template <Readable Q>
std::string print_exact(Q const& value) {
    if constexpr (std::is_same_v<Q, Temperature> || std::is_same_v<Q, WireSize>)
        return printing::exact(value);
    else
        return printing::exact(UnitsOf<Q>::table, value.value());
}

inline std::string print(Awg gauge) { return print(WireSize(gauge)); }

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/units/print_inl.hpp"
#endif
