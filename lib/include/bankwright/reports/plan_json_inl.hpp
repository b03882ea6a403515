#pragma once

#include "bankwright/planning/plan_file.hpp"
#include "bankwright/reports/json/cut_list_values.hpp"
#include "bankwright/reports/json/json_values.hpp"
#include "bankwright/reports/plan_json.hpp"

#include <string>

namespace bankwright {
namespace internal::json {

inline Json wish(Wish const& wish) {
    auto const value = [](auto const& quantity) { return quantity ? number(quantity->value()) : Json(); };
    auto stock = Json::array();
    for (auto const& size : wish.stock)
        stock.push_back(wire_size(size));
    return {{"words", in_words(wish)},
            {"system", number(wish.system.value())},
            {"motor_current", number(motor_current(wish).value())},
            {"run", number(wish.run.value())},
            {"runtime", number(wish.runtime.value())},
            {"throttle", value(wish.throttle)},
            {"chemistry", wish.chemistry ? Json(bankwright::name(*wish.chemistry)) : Json()},
            {"charger", value(wish.charger)},
            {"drop", value(wish.drop)},
            {"stock", stock}};
}

inline Json planned_bank(PlannedBank const& bank) {
    auto choices = Json::array();
    for (auto const& choice : bank.choices)
        choices.push_back({{"what", choice.what},
                           {"chosen", choice.chosen},
                           {"decided_by", choice.decided_by},
                           {"less", unless_empty(choice.less)},
                           {"broken", unless_empty(choice.broken)}});
    return {{"arrangement", bank.arrangement},
            {"battery", bank.battery},
            {"model", unless_empty(bank.model)},
            {"series", bank.series},
            {"strings", bank.strings},
            {"reserve", number(bank.reserve.value())},
            {"to_reserve", number(bank.to_reserve.value())},
            {"current_of_each", number(bank.each.value())},
            {"mass", bank.cuts.battery_mass ? number(bank.cuts.battery_mass->value()) : Json()},
            {"prices", prices(bank.cuts.prices)},
            {"choices", choices},
            {"notes", findings(bank.notes)},
            {"cut_list", cut_list(bank.cuts)}};
}

} // namespace internal::json

BANKWRIGHT_INLINE std::string plan_json(Planned const& planned) {
    namespace json = internal::json;
    auto banks = json::Json::array(), problems = json::Json::array();
    for (auto const& bank : planned.result.banks)
        banks.push_back(json::planned_bank(bank));
    for (auto const& problem : planned.result.problems)
        problems.push_back({{"part", name(problem.part)}, {"message", problem.message}, {"help", problem.help}});
    return json::print({{"bankwright", "plan"},
                        {"version", 1},
                        {"wish", planned.wish ? json::wish(*planned.wish) : json::Json()},
                        {"problems", problems},
                        {"banks", banks},
                        {"file", json::unless_empty(planned.text)}});
}

} // namespace bankwright
