// What opens the circuit when too much flows: a resettable breaker or a fuse.
#pragma once

#include "bankwright/units/price.hpp"
#include "bankwright/units/quantities.hpp"

#include <optional>
#include <string>
#include <vector>

namespace bankwright {

// One point of a time-current band that the maker prints: at a multiple of its rating it opens between the two times.
struct TripLimit {
    double multiple = 1.0; // of the rating
    Duration at_least{};
    Duration at_most{};

    friend bool operator==(TripLimit const&, TripLimit const&) = default;
};

struct ProtectiveDevice {
    std::string id; // terminals: id.line  id.load
    std::optional<Current> rating;
    std::optional<Current> interrupts;                // largest fault current it can break
    std::optional<Voltage> voltage;                   // largest voltage it can break
    std::optional<Resistance> resistance;             // ideal unless said
    std::optional<bool> closed;                       // `state`: closed unless said; a blown fuse is open
    std::optional<std::string> trip_class;            // `class`: the standard its time-current band comes from
    std::optional<std::vector<TripLimit>> trips = {}; // its own band, by rising multiple; it wins over the class
    std::optional<std::string> place = {};            // `bow`, `battery box`: worked out from lengths unless said

    std::optional<bool> fixed = {};     // it stays as it is, whatever ratings are chosen
    std::optional<Price> price = {};    // of one
    std::optional<std::string> on = {}; // post that it sits straight on: its line terminal is that post

    friend bool operator==(ProtectiveDevice const&, ProtectiveDevice const&) = default;
};

} // namespace bankwright
