#pragma once

#include "bankwright/reports/json/json_values.hpp"
#include "bankwright/reports/labels_json.hpp"

#include <string>

namespace bankwright {

BANKWRIGHT_INLINE std::string labels_json(Labels const& labels) {
    namespace json = internal::json;
    auto ends = json::Json::array();
    for (auto const& end : labels.ends)
        ends.push_back({{"conductor", end.conductor},
                        {"at", end.at},
                        {"to", end.to},
                        {"size", json::unless_empty(end.size)},
                        {"length", json::unless_empty(end.length)},
                        {"side", word(end.side)},
                        {"shape", shape(end.side)},
                        {"color", color(end.side)},
                        {"above_negative", json::number(end.above_negative.value())}});
    return json::print({{"bankwright", "labels"},
                        {"version", 1},
                        {"file", labels.file},
                        {"box",
                         {{"name", labels.box.name},
                          {"system", json::unless_empty(labels.box.system)},
                          {"arrangement", json::unless_empty(labels.box.arrangement)},
                          {"lines", labels.box.lines}}},
                        {"ends", ends}});
}

} // namespace bankwright
