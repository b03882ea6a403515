// What a meter or a clamp showed, and when; and which of it is doubted.
#pragma once

#include "bankwright/network/moment.hpp"
#include "bankwright/units/quantities.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <variant>

namespace bankwright {

struct VoltsRead {
    std::string red; // terminal under the red lead
    std::string black;
    Voltage reads{};
};
struct AmpsRead {
    std::string part; // sign as everywhere (network/readings.hpp)
    Current reads{};
};
struct TakenReading {
    std::variant<VoltsRead, AmpsRead> what;
    Moment moment{LoadsAre::at_rest, {}, {}, false, true};
};

// A reading that is more likely a slip of who read than what the bank showed.
struct DoubtfulReading {
    enum class Why { impossible, leads_exchanged, decimal_point, not_rested };
    std::size_t reading = 0; // in the order in which they were given
    Why why = Why::impossible;
    std::string message; // for people
};
constexpr std::string_view name(DoubtfulReading::Why why) {
    constexpr std::string_view names[] = {"impossible", "leads exchanged", "decimal point", "not rested"};
    return names[static_cast<std::size_t>(why)];
}

} // namespace bankwright
