// A charger with one output a battery, or one for the bank: on shore power, an alternator, solar panels.
#pragma once

#include "bankwright/units/price.hpp"
#include "bankwright/units/quantities.hpp"

#include <optional>
#include <string>

namespace bankwright {

enum class ChargerKind { shore, alternator, solar, converter }; // `kind`

struct Charger {
    std::string id;                 // terminals: id.1+  id.1-  id.2+ ...
    std::optional<int> outputs;     // 1 unless said
    std::optional<bool> isolated;   // outputs share nothing; true unless said. If false they share their negative
    std::optional<Voltage> voltage; // it holds, per output
    std::optional<Current> current; // it gives at most, per output
    std::optional<bool> connected;  // charging: plugged in, the engine running, the sun out; false unless said
    std::optional<std::string> place = {}; // `bow`, `battery box`: worked out from lengths unless said
    std::optional<ChargerKind> kind = {};  // shore unless said
    std::optional<bool> fused = {};        // its maker has put a fuse into its leads; false unless said
    std::optional<Price> price = {};       // of one
    // what it adds to its voltage for each kelvin above 25 degC and each lead-acid cell; nothing unless said
    std::optional<VoltagePerTemperature> compensation = {};

    friend bool operator==(Charger const&, Charger const&) = default;
};

// Gives wherever the boat is, and so while its loads run.
inline bool is_on_board(Charger const& charger) {
    return charger.kind == ChargerKind::alternator || charger.kind == ChargerKind::solar;
}

} // namespace bankwright
