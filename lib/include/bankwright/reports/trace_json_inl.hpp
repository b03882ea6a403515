// Body of trace_json.hpp.
#pragma once

#include "bankwright/reports/json/json_values.hpp"
#include "bankwright/reports/trace_json.hpp"

#include <string>
#include <vector>

namespace bankwright {
namespace internal::trace_objects {

inline internal::json::Json faults(std::vector<Fault> const& faults) {
    auto list = internal::json::Json::array();
    for (auto const& fault : faults)
        list.push_back({{"kind", name(fault.kind)}, {"part", fault.part}, {"detail", fault.detail}});
    return list;
}

// What the loads do: the words of a file of readings.
inline internal::json::Json state(Moment const& moment) {
    if (moment.loads == LoadsAre::at_rest) return {{"rest", true}};
    if (moment.loads == LoadsAre::constant_current)
        return {{"rest", false}, {"current", internal::json::number(moment.current.value())}};
    if (moment.throttle) return {{"rest", false}, {"throttle", internal::json::number(moment.throttle->value())}};
    return {{"rest", false}};
}

} // namespace internal::trace_objects

BANKWRIGHT_INLINE std::string trace_json(Traced const& traced) {
    namespace json = internal::json;
    auto hypotheses = json::Json::array();
    for (auto const& one : traced.result.diagnoses) {
        auto alike = json::Json::array();
        for (auto const& faults : one.alike)
            alike.push_back({{"faults", internal::trace_objects::faults(faults)}});
        hypotheses.push_back({{"faults", internal::trace_objects::faults(one.faults)},
                              {"probability", json::number(one.probability)},
                              {"misfit", json::number(one.misfit)},
                              {"alike", alike}});
    }
    json::Json next;
    if (auto const& asked = traced.result.next) {
        auto expected = json::Json::array();
        bool const is_current = !asked->part.empty();
        for (auto const& one : asked->expected)
            expected.push_back({{"faults", internal::trace_objects::faults(one.faults)},
                                {"reads", json::number(is_current ? one.flows.value() : one.reads.value())},
                                {"spread", json::number(is_current ? one.flows_spread.value() : one.spread.value())}});
        next = {{"state", internal::trace_objects::state(asked->moment)},
                {"bits", json::number(asked->bits)},
                {"again", asked->again},
                {"expected", expected}};
        if (is_current) {
            next["part"] = asked->part;
        } else {
            next["red"] = asked->red;
            next["black"] = asked->black;
            next["places"] = asked->places;
        }
    }
    auto doubtful = json::Json::array();
    for (auto const& one : traced.result.doubtful)
        doubtful.push_back({{"reading", one.reading}, {"why", name(one.why)}, {"message", one.message}});
    return json::print({{"bankwright", "trace"},
                        {"version", 1},
                        {"file", traced.file},
                        {"readings", traced.sheet.volts.size() + traced.sheet.amps.size()},
                        {"explained", traced.result.explained},
                        {"current_at_rest", traced.result.current_at_rest},
                        {"doubtful", doubtful},
                        {"hypotheses", hypotheses},
                        {"next", next}});
}

} // namespace bankwright
