#pragma once

#include "bankwright/reports/json/json_values.hpp"
#include "bankwright/reports/time_json.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace bankwright {
namespace internal::json {

inline Json samples(std::vector<BatterySample> const& all, std::vector<std::string> const& batteries) {
    auto out = Json::array();
    for (auto const& sample : all) {
        Json one{{"time", number(sample.time.value())}, {"batteries", Json::object()}};
        for (std::size_t b = 0; b < batteries.size(); ++b)
            one["batteries"][batteries[b]] = {{"charge", number(sample.charge[b].value())},
                                              {"current", number(sample.current[b].value())},
                                              {"voltage", number(sample.voltage[b].value())}};
        out.push_back(std::move(one));
    }
    return out;
}

inline Json dropped_out(std::vector<DroppedOut> const& all) {
    auto out = Json::array();
    for (auto const& gone : all)
        out.push_back({{"battery", gone.battery}, {"time", number(gone.time.value())}});
    return out;
}

inline Json reversed_cells(std::vector<ReversedCell> const& all) {
    auto out = Json::array();
    for (auto const& cell : all)
        out.push_back({{"battery", cell.battery},
                       {"time", number(cell.time.value())},
                       {"deepest", number(cell.deepest.value())}});
    return out;
}

inline Json energy(EnergySplit const& split) { // [J]
    return {{"given", number(split.given.value())},
            {"battery_heat", number(split.battery_heat.value())},
            {"wiring_heat", number(split.wiring_heat.value())},
            {"used", number(split.used.value())},
            {"charged", number(split.charged.value())}};
}

inline Json duration(std::optional<Duration> const& value) { return value ? number(value->value()) : Json(); }

inline Json between(std::optional<TimeRange> const& range) {
    if (!range) return Json();
    return Json::array({number(range->low.value()), number(range->high.value())});
}

} // namespace internal::json

BANKWRIGHT_INLINE std::string discharge_json(Discharged const& discharged) {
    namespace json = internal::json;
    auto const& run = discharged.run;
    auto given = json::Json::object();
    for (std::size_t b = 0; b < run.given.size(); ++b)
        given[discharged.batteries[b]] = json::number(run.given[b].value());
    return json::print(
        {{"bankwright", "discharge"},
         {"version", 1},
         {"file", discharged.file},
         {"arrangement", json::text(discharged.arrangement)},
         {"assumed", discharged.assumed},
         {"end", name(run.end)},
         {"ended_by", json::unless_empty(run.ended_by)},
         {"recovers", run.recovers},
         {"runtime", json::number(run.runtime.value())},
         {"to_reserve", json::duration(run.to_reserve)},
         {"runtime_range", json::between(discharged.range ? std::optional(discharged.range->runtime) : std::nullopt)},
         {"to_reserve_range", json::between(discharged.range ? discharged.range->to_reserve : std::nullopt)},
         {"runtime_alike", json::duration(discharged.alike)},
         {"legs_done", run.legs_done},
         {"dropped_out", json::dropped_out(run.dropped_out)},
         {"reversed_cells", json::reversed_cells(run.reversed_cells)},
         {"given", given},
         {"energy", json::energy(run.energy)},
         {"samples", json::samples(run.samples, discharged.batteries)},
         {"rest", json::samples(run.rest, discharged.batteries)},
         {"rest_ended_by", json::unless_empty(run.rest_ended_by)}});
}

BANKWRIGHT_INLINE std::string recharge_json(Recharged const& recharged) {
    namespace json = internal::json;
    auto const& run = recharged.run;
    auto outputs = json::Json::array();
    for (auto const& output : run.outputs)
        outputs.push_back({{"output", output.output},
                           {"holds", json::number(output.holds.value())},
                           {"most", json::number(output.most.value())},
                           {"bulk", json::duration(output.bulk)},
                           {"given", json::number(output.given.value())}});
    auto batteries = json::Json::object();
    for (std::size_t b = 0; b < run.batteries.size(); ++b)
        batteries[recharged.batteries[b]] = {{"charge", json::number(run.batteries[b].charge.value())},
                                             {"full", json::duration(run.batteries[b].full)},
                                             {"highest", json::number(run.batteries[b].highest.value())},
                                             {"most", json::number(run.batteries[b].most.value())}};
    return json::print({{"bankwright", "recharge"},
                        {"version", 1},
                        {"file", recharged.file},
                        {"arrangement", json::text(recharged.arrangement)},
                        {"assumed", recharged.assumed},
                        {"end", name(run.end)},
                        {"ended_by", json::unless_empty(run.ended_by)},
                        {"duration", json::number(run.duration.value())},
                        {"duration_range", json::between(range_of(run))},
                        {"outputs", outputs},
                        {"batteries", batteries},
                        {"dropped_out", json::dropped_out(run.dropped_out)},
                        {"energy", json::energy(run.energy)},
                        {"cautions", recharged.sources},
                        {"samples", json::samples(run.samples, recharged.batteries)}});
}

} // namespace bankwright
