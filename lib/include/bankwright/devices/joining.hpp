// What joins conductors and opens or closes on purpose: switch, busbar, receptacle and plug.
#pragma once

#include "bankwright/units/quantities.hpp"
#include "bankwright/units/wire_gauge.hpp"

#include <optional>
#include <string>

namespace bankwright {

struct Switch {
    std::string id; // terminals: id.1  id.2
    std::optional<Current> rating;
    std::optional<Resistance> resistance;  // ideal unless said
    std::optional<bool> closed;            // `state`: closed unless said
    std::optional<std::string> place = {}; // `bow`, `battery box`: worked out from lengths unless said
    friend bool operator==(Switch const&, Switch const&) = default;
};

struct Busbar {
    std::string id; // one terminal: id
    std::optional<int> studs;
    std::optional<Current> rating;
    std::optional<std::string> place = {}; // `bow`, `battery box`: worked out from lengths unless said
    friend bool operator==(Busbar const&, Busbar const&) = default;
};

// A receptacle and its plug.
struct Connector {
    std::string id; // terminals: id+  id- (receptacle)  id.plug+  id.plug-
    std::optional<Current> rating;
    std::optional<Resistance> contact;     // of one pole; ideal unless said
    std::optional<bool> mated;             // `state`: mated unless said
    std::optional<std::string> place = {}; // `bow`, `battery box`: worked out from lengths unless said
    std::optional<WireSize> max_size = {}; // thickest conductor that its terminals take; about 6 AWG unless said
    friend bool operator==(Connector const&, Connector const&) = default;
};

} // namespace bankwright
