// Body of tolerance_json.hpp.
#pragma once

#include "bankwright/reports/json/json_values.hpp"
#include "bankwright/reports/tolerance_json.hpp"

#include <string>

namespace bankwright {

BANKWRIGHT_INLINE std::string tolerance_json(Toleranced const& toleranced) {
    namespace json = internal::json;
    auto const& result = toleranced.result;
    auto const& s = toleranced.options.spreads;
    auto varied = json::Json::array(), answers = json::Json::array(), rules = json::Json::array();
    for (auto const& one : result.varied)
        varied.push_back({{"part", one.part},
                          {"key", one.key},
                          {"least", json::number(one.least)},
                          {"most", json::number(one.most)}});
    for (auto const& answer : result.answers) {
        auto influences = json::Json::array();
        for (auto const& one : answer.influences)
            influences.push_back({{"part", one.part},
                                  {"key", one.key},
                                  {"swing", json::number(one.swing)},
                                  {"share", json::number(one.share)}});
        answers.push_back({{"part", answer.part},
                           {"unit", answer.unit},
                           {"as_stated", json::number(answer.as_stated)},
                           {"mean", json::number(answer.mean)},
                           {"deviation", json::number(answer.deviation)},
                           {"least", json::number(answer.least)},
                           {"most", json::number(answer.most)},
                           {"worst_least", json::number(answer.worst_least)},
                           {"worst_most", json::number(answer.worst_most)},
                           {"influences", influences}});
    }
    for (auto const& rule : toleranced.shares.rules)
        rules.push_back({{"rule", rule.rule},
                         {"level", name(rule.level)},
                         {"samples", rule.samples},
                         {"as_stated", rule.as_stated},
                         {"part", rule.part}});
    json::Json run_time;
    if (toleranced.shares.run_time)
        run_time = {{"as_stated", json::number(toleranced.shares.run_time->as_stated.value())},
                    {"mean", json::number(toleranced.shares.run_time->mean.value())},
                    {"least", json::number(toleranced.shares.run_time->least.value())},
                    {"most", json::number(toleranced.shares.run_time->most.value())},
                    {"ended_by", toleranced.shares.run_time->ended_by}};
    return json::print({{"bankwright", "tolerance"},
                        {"version", 1},
                        {"file", toleranced.file},
                        {"arrangement", json::text(toleranced.arrangement)},
                        {"assumed", toleranced.assumed},
                        {"status", result.solved ? "solved" : "no-operating-point"},
                        {"seed", toleranced.options.seed},
                        {"samples", result.samples},
                        {"unanswered", result.unanswered},
                        {"spreads",
                         {{"resistance", s.resistance.value()},
                          {"charge", s.charge.value()},
                          {"capacity", s.capacity.value()},
                          {"conductor", s.conductor.value()},
                          {"joint", s.joint.value()},
                          {"contact", s.contact.value()}}},
                        {"varied", varied},
                        {"answers", answers},
                        {"checked", toleranced.shares.samples},
                        {"rules", rules},
                        {"run_time", run_time}});
}

} // namespace bankwright
