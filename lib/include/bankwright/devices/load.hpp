// Anything else that draws from the bank: exactly one of current, power, resistance.
#pragma once

#include "bankwright/devices/role.hpp"
#include "bankwright/units/quantities.hpp"

#include <optional>
#include <string>

namespace bankwright {

struct Load {
    std::string id;                       // terminals: id+  id-
    std::optional<Current> current;       // draws this current
    std::optional<Power> power;           // draws this power
    std::optional<Resistance> resistance; // is ohmic
    std::optional<Voltage> min_voltage;
    std::optional<Voltage> max_voltage;
    std::optional<std::string> place = {}; // `bow`, `battery box`: worked out from lengths unless said
    std::optional<Role> role = {};         // `start`: an engine's starter, that runs for seconds

    friend bool operator==(Load const&, Load const&) = default;
};

inline bool is_starter(Load const& load) { return load.role == Role::start; }

} // namespace bankwright
