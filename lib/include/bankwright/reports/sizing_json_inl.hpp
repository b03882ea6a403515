#pragma once

#include "bankwright/reports/json/json_values.hpp"
#include "bankwright/reports/sizing_json.hpp"
#include "bankwright/units/print.hpp"

#include <string>

namespace bankwright {
namespace internal::json {

inline Json wire_size(WireSize size) {
    return {{"name", bankwright::print(size)}, {"area", number(size.area().value())}};
}

inline Json sized_groups(SizingResult const& result) {
    auto out = Json::array();
    for (auto const& group : result.groups)
        out.push_back({{"parts", group.parts},
                       {"as_written", unless_empty(group.as_written)},
                       {"enough", group.chosen},
                       {"size", group.size ? wire_size(*group.size) : Json()},
                       {"rating", group.rating ? number(group.rating->value()) : Json()},
                       {"smaller", unless_empty(group.smaller)},
                       {"refused", findings(group.refused)}});
    return out;
}

inline Json cut_list(CutList const& list) {
    auto const mass = [](std::optional<Mass> const& value) { return value ? number(value->value()) : Json(); };
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
        parts.push_back({{"what", article.what}, {"detail", article.detail}, {"parts", article.parts}});
    for (auto const& battery : list.batteries)
        batteries.push_back({{"what", battery.what}, {"count", battery.count}, {"mass", mass(battery.each)}});
    return {{"wire", wire},
            {"cuts", cuts},
            {"ends", ends},
            {"parts", parts},
            {"batteries", batteries},
            {"battery_mass", mass(list.battery_mass)},
            {"screws", list.screws},
            {"receptacle_holes", list.receptacle_holes},
            {"heat_shrink", number(list.heat_shrink.value())},
            {"not_cut", list.not_cut}};
}

} // namespace internal::json

BANKWRIGHT_INLINE std::string sizing_json(Sized const& sized) {
    namespace json = internal::json;
    auto const& chosen = sized.chosen();
    auto const duration = [](std::optional<Duration> const& value) {
        return value ? json::number(value->value()) : json::Json();
    };
    json::Json strings;
    if (chosen.strings)
        strings = {{"as_written", chosen.strings->as_written},
                   {"enough", chosen.strings->chosen},
                   {"refused", json::findings(chosen.strings->refused)}};
    return json::print({{"bankwright", "size"},
                        {"version", 1},
                        {"file", sized.file},
                        {"arrangement", json::text(sized.arrangement)},
                        {"assumed", sized.assumed},
                        {"system", sized.system == SizeSystem::awg ? "AWG" : "mm2"},
                        {"runtime", duration(sized.reached)},
                        {"runtime_wanted", duration(sized.wanted)},
                        {"strings", strings},
                        {"groups", json::sized_groups(chosen)},
                        {"alternatives", json::sized_groups(sized.alternative())},
                        {"left", json::findings(chosen.left)},
                        {"cut_list", json::cut_list(sized.cuts)}});
}

} // namespace bankwright
