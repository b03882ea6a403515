// A shore-power charger with one output a battery, or one for the bank.
#pragma once

#include "bankwright/units/quantities.hpp"

#include <optional>
#include <string>

namespace bankwright {

struct Charger {
    std::string id;                 // terminals: id.1+  id.1-  id.2+ ...
    std::optional<int> outputs;     // 1 unless said
    std::optional<bool> isolated;   // outputs share nothing; true unless said. If false they share their negative
    std::optional<Voltage> voltage; // it holds, per output
    std::optional<Current> current; // it gives at most, per output
    std::optional<bool> connected;  // plugged into the shore supply and charging; false unless said
    std::optional<std::string> place = {}; // `bow`, `battery box`: worked out from lengths unless said

    friend bool operator==(Charger const&, Charger const&) = default;
};

} // namespace bankwright
