// What joins conductors and opens or closes on purpose: switch, relay, selector, shunt, busbar, receptacle and plug.
#pragma once

#include "bankwright/units/price.hpp"
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
    std::optional<Price> price = {};       // of one
    friend bool operator==(Switch const&, Switch const&) = default;
};

// A small resistance in the negative, across which a meter reads the current. Stated as it is, or as the voltage across
// it at its rated current ("500 A, 50 mV").
struct Shunt {
    std::string id; // terminals: id.1  id.2
    std::optional<Current> rating;
    std::optional<Voltage> drop; // at `rating`
    std::optional<Resistance> resistance;
    std::optional<std::string> place = {}; // `bow`, `battery box`: worked out from lengths unless said
    friend bool operator==(Shunt const&, Shunt const&) = default;
};

inline Resistance resistance_of(Shunt const& shunt) {
    if (shunt.resistance) return *shunt.resistance;
    return shunt.drop && shunt.rating ? Resistance(*shunt.drop / *shunt.rating) : Resistance{};
}

// Combines two banks while one of them is charged: closes at a voltage, opens at a lower one.
struct Relay {
    std::string id; // terminals: id.1  id.2
    std::optional<Voltage> closes_above;
    std::optional<Voltage> opens_below;
    std::optional<Current> rating;
    std::optional<bool> closed;            // `state`: by hand; unless said, as a charger's voltage tells it
    std::optional<std::string> place = {}; // `bow`, `battery box`: worked out from lengths unless said
    friend bool operator==(Relay const&, Relay const&) = default;
};

// `charging` is the highest voltage that a charger at work holds; 0 if none works. What is not stated is taken as met.
inline bool closes_at(Relay const& relay, Voltage charging) {
    return charging > Voltage{} && charging >= relay.closes_above.value_or(Voltage{});
}

enum class SelectorPosition { off, first, second, both }; // `position = "off" | "1" | "2" | "both"`

// A battery selector: joins its common to one of two banks, to both or to none.
struct Selector {
    std::string id;                           // terminals: id.1  id.2  id.common
    std::optional<SelectorPosition> position; // 1 unless said
    std::optional<Current> rating;
    std::optional<std::string> place = {}; // `bow`, `battery box`: worked out from lengths unless said
    friend bool operator==(Selector const&, Selector const&) = default;
};

constexpr bool joins_first(SelectorPosition at) {
    return at == SelectorPosition::first || at == SelectorPosition::both;
}
constexpr bool joins_second(SelectorPosition at) {
    return at == SelectorPosition::second || at == SelectorPosition::both;
}

struct Busbar {
    std::string id; // one terminal: id
    std::optional<int> studs;
    std::optional<Current> rating;
    std::optional<std::string> place = {}; // `bow`, `battery box`: worked out from lengths unless said
    std::optional<Price> price = {};       // of one
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
    std::optional<Price> price = {};       // of one
    friend bool operator==(Connector const&, Connector const&) = default;
};

} // namespace bankwright
