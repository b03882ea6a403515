#pragma once

#include "bankwright/reports/json/cut_list_values.hpp"
#include "bankwright/reports/json/json_values.hpp"
#include "bankwright/reports/sizing_json.hpp"
#include "bankwright/sizing/standard_sizes.hpp"

#include <string>

namespace bankwright {
namespace internal::json {

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

// In the other kind of size, none of which does worse; null where nothing that is sold does as well.
inline Json sized_alternatives(SizingResult const& result) {
    auto out = Json::array();
    for (auto const& group : result.groups) {
        if (!group.size) continue;
        auto const other = at_least_as_good(*group.size);
        out.push_back({{"parts", group.parts},
                       {"as_written", unless_empty(group.as_written)},
                       {"enough", other ? Json(bankwright::print(*other)) : Json()},
                       {"size", other ? wire_size(*other) : Json()}});
    }
    return out;
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
                        {"alternatives", json::sized_alternatives(chosen)},
                        {"left", json::findings(chosen.left)},
                        {"cut_list", json::cut_list(sized.cuts)}});
}

} // namespace bankwright
