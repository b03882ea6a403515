// What does somebody want who has no bank yet?
#pragma once

#include "bankwright/devices/battery.hpp"
#include "bankwright/devices/chemistry.hpp"
#include "bankwright/units/fractions.hpp"
#include "bankwright/units/quantities.hpp"
#include "bankwright/units/wire_gauge.hpp"

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace bankwright {

// The parts of a wish, as they are asked for and named: on the command line each is an option of that name.
enum class WishPart { system, motor, run, runtime, throttle, battery, chemistry, charger, drop, stock, parts };

inline constexpr std::array<std::string_view, 11> wish_part_names{
    "system", "motor", "run", "runtime", "throttle", "battery", "chemistry", "charger", "drop", "stock", "parts"};

constexpr std::string_view name(WishPart part) { return wish_part_names[static_cast<std::size_t>(part)]; }

struct Wish {
    Voltage system{};
    std::optional<Current> current; // of the motor at full throttle; one of these three is stated
    std::optional<Power> power;
    std::optional<Force> thrust;
    Length run{}; // one way, from the battery box to the receptacle
    Duration runtime{};
    std::optional<Throttle> throttle;   // at which it runs so long; full unless said
    std::optional<Battery> battery;     // of this label
    std::optional<Chemistry> chemistry; // any unless said
    std::optional<Current> charger;     // what it gives; none unless said
    std::optional<Ratio> drop;          // 3 % unless said
    std::vector<WireSize> stock;        // sizes of conductors to choose from; those usually sold where it is empty
};

// Why there is no plan: which part of the wish stands in the way, and what would help.
struct WishProblem {
    WishPart part = WishPart::system;
    std::string message;
    std::string help;
};

// The motor's current at full throttle, whichever way it is stated; from thrust as devices/motor_propeller.hpp has it.
Current motor_current(Wish const& wish);

} // namespace bankwright

#include "bankwright/linkage.hpp"
#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/planning/wish_inl.hpp"
#endif
