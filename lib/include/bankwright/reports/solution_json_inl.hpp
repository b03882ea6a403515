// Body of solution_json.hpp.
#pragma once

#include "bankwright/reports/json/json_values.hpp"
#include "bankwright/reports/solution_json.hpp"

#include <string>

namespace bankwright {

BANKWRIGHT_INLINE std::string solution_json(Solved const& solved) {
    namespace json = internal::json;
    auto const& point = solved.point;
    auto terminals = json::Json::object();
    for (auto const& terminal : point.terminals)
        terminals[terminal.name] = terminal.voltage ? json::number(terminal.voltage->value()) : json::Json();
    auto parts = json::Json::object();
    for (auto const& part : point.parts) {
        parts[part.id] = {{"kind", name(part.kind)},
                          {"current", json::number(part.current.value())},
                          {"voltage", json::number(part.voltage.value())},
                          {"power", json::number(part.power.value())}};
    }
    bool const is_solved = point.status == solver::Status::solved;
    auto const quality = [&](double value) { return is_solved ? json::number(value) : json::Json(); };
    json::Json document{{"bankwright", "solution"},
                        {"version", 1},
                        {"file", solved.file},
                        {"status", name(point.status)},
                        {"arrangement", json::text(solved.arrangement)},
                        {"assumed", solved.assumed},
                        {"reference", point.reference},
                        {"terminals", terminals},
                        {"parts", parts},
                        {"residual", quality(point.residual.value())},
                        {"power_imbalance", quality(point.imbalance.value())},
                        {"condition", quality(point.condition)}};
    if (point.reachable_share) document["reachable_share"] = json::number(*point.reachable_share);
    document["counts"] = json::counts(solved.counts);
    if (!solved.findings.empty()) document["findings"] = json::findings(solved.findings);
    return json::print(document);
}

} // namespace bankwright
