// A wire with its two ends: a jumper between posts or a longer cable. Where it goes is the bank's business.
#pragma once

#include "bankwright/units/quantities.hpp"
#include "bankwright/units/temperature.hpp"
#include "bankwright/units/wire_gauge.hpp"

#include <optional>
#include <string>

namespace bankwright {

struct Conductor {
    std::string id;
    std::optional<WireSize> size;
    std::optional<Length> length;
    std::optional<Resistance> resistance;  // the whole of it, joints included; overrides size, length and joint
    std::optional<Temperature> insulation; // temperature rating of the insulation
    std::optional<bool> tinned;
    std::optional<std::string> color;
    std::optional<Resistance> joint; // one bolted or crimped joint; it has two
    std::optional<int> bundle;       // current-carrying conductors bundled together, this one included
    std::optional<bool> enclosed;    // in a sheath, conduit or box all the way
    std::optional<bool> engine_space;
    std::optional<Temperature> temperature; // ambient unless said
    std::optional<std::string> place = {};  // `bow`, `battery box`: worked out from lengths unless said

    std::optional<bool> fixed = {}; // it stays as it is, whatever sizes are chosen

    friend bool operator==(Conductor const&, Conductor const&) = default;
};

} // namespace bankwright
