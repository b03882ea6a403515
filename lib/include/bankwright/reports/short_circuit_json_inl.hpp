// Body of short_circuit_json.hpp.
#pragma once

#include "bankwright/reports/json/json_values.hpp"
#include "bankwright/reports/short_circuit_json.hpp"

namespace bankwright {
namespace internal::json {

template <class Q>
Json si_or_null(std::optional<Q> const& value) {
    return value ? number(value->value()) : Json();
}

inline Json yes_or_no(std::optional<bool> const& answer) { return answer ? Json(*answer) : Json(); }

inline Json band(std::optional<TripBand> const& known) {
    if (!known) return Json();
    return {{"at_least", number(known->at_least.value())},
            {"at_most", number(known->at_most.value())},
            {"source", known->source.document},
            {"confidence", known->source.confidence}};
}

inline Json on_conductor(std::optional<ConductorInShort> const& carried) {
    if (!carried) return Json();
    return {{"at", carried->at},
            {"current", number(carried->current.value())},
            {"heat", si_or_null(carried->heat)},
            {"survives", yes_or_no(carried->survives)},
            {"bears", si_or_null(carried->bears)}};
}

inline std::string_view needed_by(DeviceDuty const& device) {
    switch (device.needed_by) {
    case NeededBy::table:
        return "table";
    case NeededBy::large_bank:
        return "large bank";
    case NeededBy::short_circuit:
        break;
    }
    return "short";
}

} // namespace internal::json

BANKWRIGHT_INLINE std::string short_circuit_json(ShortCircuited const& shorted) {
    namespace json = internal::json;
    using json::Json;
    auto places = Json::array();
    for (auto const& place : shorted.result.places) {
        auto devices = Json::object();
        for (auto const& device : place.devices)
            devices[device.id] = {{"current", json::number(device.through.value())},
                                  {"opens", json::band(device.band)},
                                  {"interrupts", json::yes_or_no(device.interrupts)}};
        places.push_back({{"terminal", place.terminal},
                          {"against", place.against},
                          {"voltage", json::number(place.voltage.value())},
                          {"current", json::number(place.prospective.value())},
                          {"devices", std::move(devices)},
                          {"cleared_by", place.cleared_by},
                          {"cleared_within", json::si_or_null(place.cleared_within)},
                          {"bypassed", place.bypassed}});
    }
    auto devices = Json::object();
    for (auto const& device : shorted.result.devices)
        devices[device.id] = {
            {"current", json::number(device.most.value())},      {"at", json::unless_empty(device.at)},
            {"need", json::number(device.need.value())},         {"needed_by", json::needed_by(device)},
            {"interrupts", json::si_or_null(device.interrupts)}, {"suffices", json::yes_or_no(device.suffices)}};
    auto conductors = Json::object();
    for (auto const& conductor : shorted.result.conductors)
        conductors[conductor.id] = {{"withstand", json::si_or_null(conductor.withstand)},
                                    {"ended", json::on_conductor(conductor.ended)},
                                    {"unended", json::on_conductor(conductor.unended)}};
    return json::print({{"bankwright", "short-circuit"},
                        {"version", 1},
                        {"file", shorted.file},
                        {"arrangement", json::text(shorted.arrangement)},
                        {"assumed", shorted.assumed},
                        {"places", std::move(places)},
                        {"devices", std::move(devices)},
                        {"conductors", std::move(conductors)},
                        {"counts", json::counts(shorted.counts)}});
}

} // namespace bankwright
