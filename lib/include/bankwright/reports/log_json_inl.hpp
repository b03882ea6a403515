// Body of log_json.hpp.
#pragma once

#include "bankwright/reports/hooked_up.hpp"
#include "bankwright/reports/json/json_values.hpp"
#include "bankwright/reports/log_json.hpp"

namespace bankwright {
namespace internal::log_objects {

using json::Json;

inline Json volts(std::optional<Voltage> const& value) { return value ? json::number(value->value()) : Json(); }

// Which line of the sheet, and what is expected there.
inline Json question(LoggedHookup const& logged, std::size_t q) {
    auto const& asked = logged.questions[q];
    bool const is_of_step =
        asked.when == LogWhen::before || asked.when == LogWhen::after || asked.when == LogWhen::done;
    Json out{{"when", name(asked.when)}, {"part", asked.part}, {"step", is_of_step ? Json(asked.index + 1) : Json()}};
    if (auto const* right = right_reading(asked, logged.sheet)) {
        out["red"] = right->red;
        out["black"] = right->black;
        out["unit"] = "V";
        out["expected"] = volts(right->expected);
        out["low"] = right->expected ? json::number(right->low.value()) : Json();
        out["high"] = right->expected ? json::number(right->high.value()) : Json();
    } else if (!is_of_step) {
        auto const& check = logged.sheet.dead[asked.index];
        bool const joined = check.kind == DeadCheckKind::run || check.kind == DeadCheckKind::loop;
        out["red"] = check.red;
        out["black"] = json::unless_empty(check.black);
        out["unit"] = "ohm";
        out["continuity"] = joined;
    }
    return out;
}

inline void add_reading(Json& out, LogEntry const& entry) {
    auto const* read = std::get_if<Voltage>(&entry.reads);
    auto const* ohms = std::get_if<Resistance>(&entry.reads);
    out["shown"] = written(entry.reads);
    out["reads"] = read ? json::number(read->value()) : ohms ? json::number(ohms->value()) : Json();
    out["time"] = json::unless_empty(entry.time);
}

inline Json mistake(Mistake const& one) {
    Json out{{"mistake", name(one.kind)}, {"part", json::unless_empty(one.part)}};
    if (!one.at.empty()) {
        out["at"] = one.at;
        out["onto"] = one.onto;
    }
    return out;
}

inline Json causes(MistakeFound const& found) {
    auto causes = Json::array();
    for (auto const& chance : found.chances) {
        auto alike = Json::array();
        for (auto const& one : chance.alike)
            alike.push_back(mistake(one));
        causes.push_back({{"probability", json::number(chance.probability)}, {"mistakes", std::move(alike)}});
    }
    return causes;
}

inline Json read_next(ProbeAsked const& next) {
    auto expected = Json::array();
    for (auto const& one : next.expected)
        expected.push_back({{"cause", one.chance},
                            {"reads", next.is_ohms || one.floats ? Json() : json::number(one.reads.value())},
                            {"continuity", next.is_ohms ? Json(one.joined) : Json()}});
    return {{"red", next.red},
            {"black", next.black},
            {"unit", next.is_ohms ? "ohm" : "V"},
            {"bits", json::number(next.bits)},
            {"expected", std::move(expected)}};
}

} // namespace internal::log_objects

BANKWRIGHT_INLINE std::string log_json(LoggedHookup const& logged) {
    namespace json = internal::json;
    namespace objects = internal::log_objects;
    using json::Json;
    auto const& judged = logged.judged;
    auto answers = Json::array();
    for (std::size_t q = 0; q < logged.questions.size(); ++q) {
        auto const& answer = judged.answers[q];
        if (!answer) continue;
        auto one = objects::question(logged, q);
        objects::add_reading(one, logged.log.entries[answer->entry]);
        one["verdict"] = answer->is_right && !answer->is_over_gap ? "go" : "stop";
        one["over_gap"] = answer->is_over_gap;
        answers.push_back(std::move(one));
    }
    auto further = Json::array();
    for (auto const e : judged.further) {
        Json one{{"red", logged.log.entries[e].red}, {"black", logged.log.entries[e].black}};
        objects::add_reading(one, logged.log.entries[e]);
        further.push_back(std::move(one));
    }
    auto strays = Json::array();
    for (auto const e : judged.strays)
        strays.push_back(
            {{"entry", e}, {"when", name(logged.log.entries[e].when)}, {"part", logged.log.entries[e].part}});
    auto left_out = Json::array();
    for (auto const q : judged.left_out)
        left_out.push_back(objects::question(logged, q));
    return json::print(
        {{"bankwright", "log"},
         {"version", 1},
         {"file", logged.file},
         {"log", logged.log_file},
         {"name", json::unless_empty(logged.log.name)},
         {"arrangement", json::text(logged.arrangement)},
         {"status", name(judged.state)},
         {"changed", logged.changed},
         {"meter",
          {{"of_reading", json::number(logged.options.of_reading)},
           {"digits", logged.options.digits},
           {"resolution", objects::volts(logged.options.resolution)}}},
         {"questions", logged.questions.size()},
         {"answers", std::move(answers)},
         {"left_out", std::move(left_out)},
         {"strays", std::move(strays)},
         {"at", judged.at ? objects::question(logged, *judged.at) : Json()},
         {"again", judged.again},
         {"further", std::move(further)},
         {"causes", judged.found ? objects::causes(*judged.found) : Json::array()},
         {"read_next",
          judged.found && judged.found->next && !judged.again ? objects::read_next(*judged.found->next) : Json()},
         {"counts", json::counts(logged.counts)}});
}

} // namespace bankwright
