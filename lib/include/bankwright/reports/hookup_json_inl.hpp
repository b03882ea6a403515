// Body of hookup_json.hpp.
#pragma once

#include "bankwright/reports/cautions.hpp"
#include "bankwright/reports/hookup_json.hpp"
#include "bankwright/reports/json/json_values.hpp"

namespace bankwright {
namespace internal::json {

inline Json volts(std::optional<Voltage> const& value) { return value ? number(value->value()) : Json(); }

inline Json reading(MeterReading const& right) {
    auto wrong = Json::array();
    for (auto const& group : right.wrong) {
        auto causes = Json::array();
        for (auto const& cause : group.causes) {
            auto const& mistake = cause.mistake;
            Json one{{"mistake", name(mistake.kind)}, {"part", mistake.part}, {"reads", volts(cause.reads)}};
            if (cause.depends_on_load) one["through_load"] = volts(cause.through_load);
            if (!mistake.at.empty()) {
                one["at"] = mistake.at;
                one["onto"] = mistake.onto;
            }
            causes.push_back(std::move(one));
        }
        wrong.push_back({{"reads", volts(group.causes.front().reads)}, {"causes", std::move(causes)}});
    }
    auto const bound = [&](Voltage value) { return right.expected ? number(value.value()) : Json(); };
    Json out{{"red", right.red},        {"black", right.black},      {"expected", volts(right.expected)},
             {"low", bound(right.low)}, {"high", bound(right.high)}, {"wrong", std::move(wrong)}};
    if (!right.loose.empty()) out["loose_end"] = {{"of", right.loose_part}, {"for", right.loose}};
    return out;
}

inline Json reading(std::optional<MeterReading> const& right) { return right ? reading(*right) : Json(); }

inline Json step(HookupStep const& step) {
    Json out{{"action", name(step.action)}, {"part", step.part}, {"places", step.places}};
    if (!step.first.empty()) out["ends"] = {step.first, step.last};
    out["dead"] = step.dead;
    out["live_make"] = step.live_make;
    out["before"] = reading(step.before);
    out["after"] = reading(step.after);
    if (auto const& flows = step.equalizing) {
        out["equalizing"] = {{"gap", number(flows->gap.value())},
                             {"current", number(flows->expected.value())},
                             {"at_most", number(flows->at_most.value())},
                             {"gap_limit", volts(flows->gap_limit)},
                             {"limited_by", flows->gap_limit ? Json(flows->limited_by) : Json()}};
    }
    return out;
}

inline Json dead_check(DeadCheck const& check) {
    auto const named = [](std::string const& id) { return id.empty() ? Json() : Json(id); };
    bool const joined = check.kind == DeadCheckKind::run || check.kind == DeadCheckKind::loop;
    Json out{{"check", name(check.kind)},   {"part", check.part},   {"other", named(check.other)},   {"red", check.red},
             {"black", named(check.black)}, {"continuity", joined}, {"lengthened", check.lengthened}};
    out["place"] = check.place;
    if (check.kind == DeadCheckKind::load) {
        out["loads"] = check.loads;
        out["ohms"] = check.ohms ? number(check.ohms->value()) : Json();
    }
    if (!check.clip.empty()) out["clip"] = {check.clip, check.onto};
    return out;
}

inline Json step(DisconnectStep const& step) {
    Json out{{"undoes", name(step.undoes)}, {"part", step.part}, {"places", step.places}};
    if (!step.first.empty()) out["ends"] = {step.first, step.last};
    out["then"] = reading(step.then);
    out["still_live"] = reading(step.still_live);
    return out;
}

} // namespace internal::json

BANKWRIGHT_INLINE std::string hookup_json(HookedUp const& hooked) {
    namespace json = internal::json;
    using json::Json;
    Json document{{"bankwright", "hookup"},
                  {"version", 1},
                  {"file", hooked.file},
                  {"arrangement", json::text(hooked.arrangement)},
                  {"status", hooked.result ? "ready" : "refused"}};
    if (!hooked.result) {
        document["counts"] = json::counts(hooked.counts);
        document["findings"] = json::findings(hooked.findings);
        document["cautions"] = refusal_cautions(hooked.findings);
        return json::print(document);
    }
    auto const& result = *hooked.result;
    auto batteries = Json::array();
    for (auto const& battery : result.batteries)
        batteries.push_back(json::reading(battery));
    auto dead = Json::array();
    for (auto const& check : result.dead)
        dead.push_back(json::dead_check(check));
    auto connect = Json::array();
    for (auto const& step : result.steps)
        connect.push_back(json::step(step));
    auto disconnect = Json::array();
    for (auto const& step : result.disconnect)
        disconnect.push_back(json::step(step));
    document["meter"] = {{"of_reading", json::number(hooked.options.of_reading)},
                         {"digits", hooked.options.digits},
                         {"resolution", json::volts(hooked.options.resolution)}};
    if (!hooked.findings.empty()) document["findings"] = json::findings(hooked.findings);
    document["charge_within"] = json::number(hooked.options.charge_within.value());
    document["cautions"] = hookup_cautions();
    document["left_open"] = result.left_open;
    document["batteries"] = std::move(batteries);
    document["dead_checks"] = std::move(dead);
    document["connect"] = std::move(connect);
    document["disconnect"] = std::move(disconnect);
    document["largest_closing_gap"] = json::number(result.largest_gap.value());
    document["order_proven"] = result.proven;
    document["counts"] = json::counts(hooked.counts);
    return json::print(document);
}

} // namespace bankwright
