// Which member does each key fill? Said once, for reading and for writing; keys.hpp says what the keys mean.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/config/keys.hpp"

#include <type_traits>

namespace bankwright {

// A member that is true or false in the program and one of two words in the file.
template <class Member>
struct TwoWords {
    Member& is_first;
    std::array<std::string_view, 2> const& words;
};
template <class Member>
TwoWords(Member&, std::array<std::string_view, 2> const&) -> TwoWords<Member>;

// Calls visit(key, member) for every key of the part but `model`, in the order of keys.hpp. A member is a std::optional
// of a quantity, int, bool, Date, Chemistry, SpeedControl, SelectorPosition, Role, ChargerKind, std::string,
// Dimensions, Price, sizes or the points of a band; a TwoWords of a std::optional<bool>; or, for what always has a
// value, a std::string, Temperature or Resistance.
template <class Part, class Visit>
void for_each_field(Part& part, Visit&& visit) {
    using Kind = std::remove_const_t<Part>;
    if constexpr (std::is_same_v<Kind, System>) {
        visit("voltage", part.voltage);
        visit("ambient", part.ambient);
        visit("runtime", part.runtime);
        visit("reserve", part.reserve);
        visit("joint", part.joint);
        visit("drop", part.drop);
        visit("stock", part.stock);
    } else if constexpr (std::is_same_v<Kind, Battery>) {
        visit("chemistry", part.chemistry);
        visit("voltage", part.voltage);
        visit("cells", part.cells);
        visit("capacity", part.capacity);
        visit("capacity_hours", part.capacity_hours);
        visit("reserve", part.reserve);
        visit("cranking", part.cranking);
        visit("resistance", part.resistance);
        visit("charge", part.charge);
        visit("health", part.health);
        visit("emf", part.emf);
        visit("temperature", part.temperature);
        visit("made", part.made);
        visit("dead_cells", part.dead_cells);
        visit("weak_cells", part.weak_cells);
        visit("weak_capacity", part.weak_capacity);
        visit("max_discharge", part.max_discharge);
        visit("max_charge", part.max_charge);
        visit("max_series", part.max_series);
        visit("max_parallel", part.max_parallel);
        visit("low_cutoff", part.low_cutoff);
        visit("high_cutoff", part.high_cutoff);
        visit("mass", part.mass);
        visit("place", part.place);
        visit("role", part.role);
        visit("price", part.price);
        visit("size", part.size);
    } else if constexpr (std::is_same_v<Kind, Run>) {
        visit("from", part.from);
        visit("to", part.to);
        visit("size", part.conductor.size);
        visit("length", part.conductor.length);
        visit("resistance", part.conductor.resistance);
        visit("insulation", part.conductor.insulation);
        visit("tinned", part.conductor.tinned);
        visit("color", part.conductor.color);
        visit("joint", part.conductor.joint);
        visit("bundle", part.conductor.bundle);
        visit("enclosed", part.conductor.enclosed);
        visit("engine_space", part.conductor.engine_space);
        visit("temperature", part.conductor.temperature);
        visit("place", part.conductor.place);
        visit("fixed", part.conductor.fixed);
    } else if constexpr (std::is_same_v<Kind, ProtectiveDevice>) {
        visit("rating", part.rating);
        visit("interrupts", part.interrupts);
        visit("voltage", part.voltage);
        visit("resistance", part.resistance);
        visit("state", TwoWords{part.closed, keys::contact_words});
        visit("class", part.trip_class);
        visit("trips", part.trips);
        visit("place", part.place);
        visit("fixed", part.fixed);
        visit("price", part.price);
        visit("on", part.on);
    } else if constexpr (std::is_same_v<Kind, Switch>) {
        visit("rating", part.rating);
        visit("resistance", part.resistance);
        visit("state", TwoWords{part.closed, keys::contact_words});
        visit("place", part.place);
        visit("price", part.price);
    } else if constexpr (std::is_same_v<Kind, Shunt>) {
        visit("rating", part.rating);
        visit("drop", part.drop);
        visit("resistance", part.resistance);
        visit("place", part.place);
    } else if constexpr (std::is_same_v<Kind, Relay>) {
        visit("closes_above", part.closes_above);
        visit("opens_below", part.opens_below);
        visit("rating", part.rating);
        visit("state", TwoWords{part.closed, keys::contact_words});
        visit("place", part.place);
    } else if constexpr (std::is_same_v<Kind, Selector>) {
        visit("position", part.position);
        visit("rating", part.rating);
        visit("place", part.place);
    } else if constexpr (std::is_same_v<Kind, Busbar>) {
        visit("studs", part.studs);
        visit("rating", part.rating);
        visit("place", part.place);
        visit("price", part.price);
    } else if constexpr (std::is_same_v<Kind, Connector>) {
        visit("rating", part.rating);
        visit("contact", part.contact);
        visit("state", TwoWords{part.mated, keys::mating_words});
        visit("place", part.place);
        visit("max_size", part.max_size);
        visit("price", part.price);
    } else if constexpr (std::is_same_v<Kind, Motor>) {
        visit("voltage", part.voltage);
        visit("current", part.current);
        visit("throttle", part.throttle);
        visit("winding", part.winding);
        visit("control", part.control);
        visit("thrust", part.thrust);
        visit("min_voltage", part.min_voltage);
        visit("place", part.place);
        visit("max_current", part.max_current);
    } else if constexpr (std::is_same_v<Kind, Load>) {
        visit("current", part.current);
        visit("power", part.power);
        visit("resistance", part.resistance);
        visit("min_voltage", part.min_voltage);
        visit("max_voltage", part.max_voltage);
        visit("place", part.place);
        visit("role", part.role);
    } else if constexpr (std::is_same_v<Kind, Charger>) {
        visit("outputs", part.outputs);
        visit("isolated", part.isolated);
        visit("voltage", part.voltage);
        visit("current", part.current);
        visit("connected", part.connected);
        visit("place", part.place);
        visit("kind", part.kind);
        visit("fused", part.fused);
        visit("price", part.price);
        visit("compensation", part.compensation);
    } else if constexpr (std::is_same_v<Kind, Converter>) {
        visit("isolated", part.isolated);
        visit("efficiency", part.efficiency);
        visit("voltage", part.voltage);
        visit("power", part.power);
        visit("place", part.place);
    } else {
        static_assert(std::is_same_v<Kind, void>, "a kind of part without keys");
    }
}

} // namespace bankwright
