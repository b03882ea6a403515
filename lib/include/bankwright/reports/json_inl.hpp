#pragma once

#include "bankwright/reports/cautions.hpp"
#include "bankwright/reports/json.hpp"

#include <nlohmann/json.hpp>

#include <cmath>
#include <cstddef>
#include <optional>
#include <string>
#include <utility>

namespace bankwright {
namespace json {

using Json = nlohmann::ordered_json;

// Text from a file may be anything: what is no UTF-8 becomes U+FFFD.
inline std::string print(Json const& document) {
    return document.dump(2, ' ', false, Json::error_handler_t::replace) + '\n';
}

inline Json number(double value) { return std::isfinite(value) ? Json(value) : Json(); }
inline Json number(std::optional<double> value) { return value ? number(*value) : Json(); }
inline Json text(std::optional<std::string> const& value) { return value ? Json(*value) : Json(); }
inline Json unless_empty(std::string const& value) { return value.empty() ? Json() : Json(value); }

inline Json finding(Finding const& f) {
    auto const at = [&](auto end, auto coordinate) { return f.region ? Json((*f.region).*end.*coordinate) : Json(); };
    Json out{{"rule", f.rule},
             {"level", name(f.level)},
             {"message", f.message},
             {"help", f.help},
             {"parts", f.parts},
             {"line", at(&Region::begin, &Position::line)},
             {"column", at(&Region::begin, &Position::column)},
             {"end_line", at(&Region::end, &Position::line)},
             {"end_column", at(&Region::end, &Position::column)},
             {"found", number(f.found)},
             {"allowed", number(f.allowed)},
             {"unit", unless_empty(f.unit)},
             {"accepted", f.accepted}};
    if (f.accepted) out["accepted_because"] = f.accepted_because;
    if (!f.file.empty()) out["file"] = f.file; // it stands in a part list
    if (!f.key.empty()) out["key"] = f.key;
    if (!f.consequences.empty()) out["consequences"] = f.consequences;
    return out;
}

inline Json findings(Findings const& all) {
    auto out = Json::array();
    for (auto const& one : all)
        out.push_back(finding(one));
    return out;
}

inline Json counts(FindingCounts const& c) { return {{"error", c.error}, {"warning", c.warning}, {"note", c.note}}; }

} // namespace json

BANKWRIGHT_INLINE std::string findings_json(Verdicts const& verdicts) {
    json::Json document{{"bankwright", "findings"}, {"version", 1}, {"files", json::Json::array()}};
    for (auto const& verdict : verdicts) {
        document["files"].push_back({{"file", verdict.file},
                                     {"arrangement", json::text(verdict.arrangement)},
                                     {"counts", json::counts(count(verdict.findings))},
                                     {"findings", json::findings(verdict.findings)}});
    }
    if (calls_for_cautions(verdicts)) document["cautions"] = cautions;
    return json::print(document);
}

BANKWRIGHT_INLINE std::string solution_json(Solved const& solved) {
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
