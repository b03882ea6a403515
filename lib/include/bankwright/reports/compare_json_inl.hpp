#pragma once

#include "bankwright/reports/compare_json.hpp"
#include "bankwright/reports/compare_words.hpp"
#include "bankwright/reports/json/cut_list_values.hpp"
#include "bankwright/reports/json/json_values.hpp"

#include <string>
#include <vector>

namespace bankwright {

BANKWRIGHT_INLINE std::string compare_json(std::vector<BankFigures> const& banks) {
    namespace json = internal::json;
    auto const value = [](auto const& quantity) { return quantity ? json::number(quantity->value()) : json::Json(); };
    auto all = json::Json::array(), rows = json::Json::array();
    for (auto const& bank : banks) {
        auto loads = json::Json::object();
        for (auto const& [id, volts] : bank.loads)
            loads[id] = json::number(volts.value());
        auto copper = json::Json::array();
        for (auto const& one : bank.copper)
            copper.push_back({{"size", json::wire_size(one.size)}, {"length", json::number(one.length.value())}});
        all.push_back({{"file", bank.name},
                       {"arrangement", json::text(bank.arrangement)},
                       {"counts", json::counts(count(bank.findings))},
                       {"findings", json::findings(bank.findings)},
                       {"voltages", loads},
                       {"hardest", json::unless_empty(bank.hardest)},
                       {"hardest_current", value(bank.hardest_current)},
                       {"share", json::number(bank.share)},
                       {"runtime", value(bank.runtime)},
                       {"to_reserve", value(bank.to_reserve)},
                       {"largest_short", value(bank.largest_short)},
                       {"copper", copper},
                       {"mass", value(bank.cuts.battery_mass)},
                       {"prices", json::prices(bank.cuts.prices)}});
    }
    for (auto const& row : compared_rows(banks)) {
        auto values = json::Json::array();
        for (auto const& text : row.values)
            values.push_back(json::unless_empty(text));
        rows.push_back({{"what", row.what}, {"differs", row.differs}, {"values", values}});
    }
    return json::print({{"bankwright", "comparison"}, {"version", 1}, {"banks", all}, {"rows", rows}});
}

} // namespace bankwright
