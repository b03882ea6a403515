// A DC-to-DC converter: takes power from one bank and gives it to another voltage, or charges another bank.
#pragma once

#include "bankwright/units/fractions.hpp"
#include "bankwright/units/quantities.hpp"

#include <optional>
#include <string>

namespace bankwright {

struct Converter {
    std::string id;                        // terminals: id.in+  id.in-  id.out+  id.out-
    std::optional<bool> isolated;          // input and output share nothing; true unless said. If false, their negative
    std::optional<Efficiency> efficiency;  // of its full power; usual_efficiency unless said
    std::optional<Voltage> voltage;        // that its output holds
    std::optional<Power> power;            // most that its output gives
    std::optional<std::string> place = {}; // `bow`, `battery box`: worked out from lengths unless said

    friend bool operator==(Converter const&, Converter const&) = default;
};

// Common practice, no source: converters of some hundred watts state 85 to 95 %.
inline constexpr double usual_efficiency = 0.9;

} // namespace bankwright
