// How do numbers, texts and findings stand in a JSON document? In one way in all of them.
#pragma once

#include "bankwright/findings/finding.hpp"
#include "bankwright/reports/expectation.hpp"
#include "bankwright/reports/tally.hpp"

#include <cmath>
#include <optional>
#include <string>

#include <nlohmann/json.hpp>

namespace bankwright {
namespace internal::json {

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
    if (f.allowed && is_expectation(f)) out["expected"] = number(f.allowed); // `allowed` again: it is no limit
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

} // namespace internal::json

} // namespace bankwright
