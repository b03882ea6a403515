// What does somebody type who reads a meter? "12.7", "12,7 V", "-12.6v", "OL", "ok", "0.3 ohm".
#pragma once

#include "bankwright/bank/hookup_log.hpp"

#include <string>
#include <string_view>

struct TypedReading {
    bankwright::Shown reads{};
    std::string problem; // empty: it was understood
};

// A bare number is in volts, or in ohms where an ohmmeter is asked for.
TypedReading typed_reading(std::string_view typed, bool is_ohms);
