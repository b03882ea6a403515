// A DC motor with a propeller, behind its speed control, as its nameplate describes it.
#pragma once

#include "bankwright/units/fractions.hpp"
#include "bankwright/units/quantities.hpp"

#include <optional>
#include <string>

namespace bankwright {

enum class SpeedControl {
    pulse_width, // `control = "pwm"`: a chopper; throttle is its duty cycle
    direct,      // `control = "direct"`: none; off or full
};

struct Motor {
    std::string id;                          // terminals: id+  id-
    std::optional<Voltage> voltage;          // nameplate
    std::optional<Current> current;          // nameplate, at `voltage` and full throttle
    std::optional<Throttle> throttle;        // full unless said
    std::optional<Resistance> winding;       // armature, brushes and leads inside; 0 unless said
    std::optional<SpeedControl> control;     // pulse_width unless said
    std::optional<Force> thrust;             // nameplate static thrust at full throttle
    std::optional<Voltage> min_voltage;      // below this its speed control stops
    std::optional<Current> max_current = {}; // most that its control lets through
    std::optional<std::string> place = {};   // `bow`, `battery box`: worked out from lengths unless said

    friend bool operator==(Motor const&, Motor const&) = default;
};

} // namespace bankwright
