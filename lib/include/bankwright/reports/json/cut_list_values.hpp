// A cut list in a JSON document.
#pragma once

#include "bankwright/reports/json/json_values.hpp"
#include "bankwright/sizing/cut_list.hpp"
#include "bankwright/units/print.hpp"

#include <optional>

namespace bankwright {
namespace internal::json {

inline Json wire_size(WireSize size) {
    return {{"name", bankwright::print(size)}, {"area", number(size.area().value())}};
}

inline Json price(std::optional<Price> const& value) {
    return value
               ? Json{{"amount", number(static_cast<double>(value->hundredths) / 100.0)}, {"currency", value->currency}}
               : Json();
}

inline Json prices(std::vector<Price> const& sums) {
    auto out = Json::array();
    for (auto const& sum : sums)
        out.push_back(price(sum));
    return out;
}

inline Json cut_list(CutList const& list) {
    auto const mass = [](std::optional<Mass> const& value) { return value ? number(value->value()) : Json(); };
    auto const sides = [](std::optional<Dimensions> const& value) {
        return value ? Json{number(value->length.value()), number(value->width.value()), number(value->height.value())}
                     : Json();
    };
    auto wire = Json::array(), cuts = Json::array(), ends = Json::array(), parts = Json::array(),
         batteries = Json::array();
    for (auto const& total : list.wire)
        wire.push_back({{"size", wire_size(total.size)},
                        {"color", total.color},
                        {"pieces", total.pieces},
                        {"length", number(total.length.value())}});
    for (auto const& cut : list.cuts)
        cuts.push_back({{"id", cut.id},
                        {"size", wire_size(cut.size)},
                        {"color", cut.color},
                        {"from", cut.from},
                        {"to", cut.to},
                        {"run", number(cut.run.value())},
                        {"cut", number(cut.cut.value())}});
    for (auto const& end : list.ends)
        ends.push_back({{"what", end.what}, {"size", wire_size(end.size)}, {"on", end.on}, {"count", end.count}});
    for (auto const& article : list.articles)
        parts.push_back({{"what", article.what},
                         {"detail", article.detail},
                         {"parts", article.parts},
                         {"price", price(article.each)}});
    for (auto const& battery : list.batteries)
        batteries.push_back({{"what", battery.what},
                             {"count", battery.count},
                             {"mass", mass(battery.each)},
                             {"price", price(battery.price)},
                             {"size", sides(battery.size)}});
    return {{"wire", wire},
            {"cuts", cuts},
            {"ends", ends},
            {"parts", parts},
            {"batteries", batteries},
            {"battery_mass", mass(list.battery_mass)},
            {"prices", prices(list.prices)},
            {"without_price", list.without_price},
            {"screws", list.screws},
            {"receptacle_holes", list.receptacle_holes},
            {"heat_shrink", number(list.heat_shrink.value())},
            {"not_cut", list.not_cut}};
}

} // namespace internal::json

} // namespace bankwright
