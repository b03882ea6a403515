#pragma once

#include "bankwright/reports/cautions.hpp"
#include "bankwright/reports/expectation.hpp"
#include "bankwright/reports/sarif.hpp"
#include "bankwright/reports/tally.hpp"
#include "bankwright/version.hpp"

#include <cmath>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace bankwright {
namespace internal::sarif {

using Json = nlohmann::ordered_json;

// A file's name as a URI reference (RFC 3986): bytes that a path may not hold are percent-encoded.
inline std::string uri(std::string_view file) {
    constexpr std::string_view plain = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-._~/";
    std::string out = !file.empty() && file.front() == '/' ? "file://" : "";
    for (char const c : file) {
        if (plain.find(c) != std::string_view::npos)
            out += c;
        else
            out += fmt::format("%{:02X}", static_cast<unsigned char>(c));
    }
    return out;
}

inline Json message(std::string_view text) { return {{"text", text}}; }

inline Json rule(RuleInfo const& info) {
    return {{"id", info.id},
            {"shortDescription", message(info.what)},
            {"fullDescription", message(info.why)},
            {"help", message(info.fix)},
            {"defaultConfiguration", {{"level", name(info.level)}}},
            {"properties", {{"source", info.source}, {"since", info.since}}}};
}

inline Json region(Region const& r) {
    return {{"startLine", r.begin.line},
            {"startColumn", r.begin.column},
            {"endLine", r.end.line},
            {"endColumn", r.end.column}};
}

inline Json location(Verdict const& verdict, Finding const& finding) {
    Json physical{{"artifactLocation", {{"uri", uri(file_of(verdict, finding))}}}};
    if (finding.region) physical["region"] = region(*finding.region);
    Json out{{"physicalLocation", physical}};
    auto parts = Json::array();
    for (auto const& part : finding.parts)
        parts.push_back({{"name", part}, {"kind", "element"}});
    if (!parts.empty()) out["logicalLocations"] = parts;
    return out;
}

inline Json result(Verdict const& verdict, Finding const& finding, std::vector<RuleInfo const*> const& rules) {
    auto text = finding.message;
    if (!finding.help.empty()) text += "; " + finding.help;
    Json out{{"ruleId", finding.rule}};
    for (std::size_t i = 0; i < rules.size(); ++i)
        if (rules[i]->id == finding.rule) out["ruleIndex"] = i;
    out["level"] = name(finding.level);
    out["message"] = message(text);
    out["locations"] = Json::array({location(verdict, finding)});
    // An empty array says that suppression was considered: a log must not mix results with and without it (3.27.23).
    out["suppressions"] = Json::array();
    if (finding.accepted) {
        Json suppression{{"kind", "inSource"}};
        if (!finding.accepted_because.empty()) suppression["justification"] = finding.accepted_because;
        out["suppressions"].push_back(suppression);
    }
    auto properties = Json::object();
    if (finding.found && std::isfinite(*finding.found)) properties["found"] = *finding.found;
    if (finding.allowed && std::isfinite(*finding.allowed)) {
        properties["allowed"] = *finding.allowed;
        if (is_expectation(finding)) properties["expected"] = *finding.allowed;
    }
    if (!finding.unit.empty()) properties["unit"] = finding.unit;
    if (!finding.consequences.empty()) properties["consequences"] = finding.consequences;
    if (!properties.empty()) out["properties"] = properties;
    return out;
}

// Which rules the caller left out, file by file (3.20.22: what the configuration kept a tool from).
inline Json left_out(Verdicts const& verdicts) {
    auto told_of = Json::array();
    for (auto const& verdict : verdicts) {
        if (verdict.left_out_rules.names.empty()) continue;
        told_of.push_back(
            {{"level", "note"},
             {"message", message(told(verdict.left_out_rules))},
             {"locations",
              Json::array({Json{{"physicalLocation", {{"artifactLocation", {{"uri", uri(verdict.file)}}}}}}})},
             {"properties", {{"leftOut", verdict.left_out_rules.names}}}});
    }
    return told_of;
}

} // namespace internal::sarif

BANKWRIGHT_INLINE std::string findings_sarif(Verdicts const& verdicts, std::vector<RuleInfo const*> const& rules) {
    using internal::sarif::Json;
    auto described = Json::array();
    for (auto const* info : rules)
        described.push_back(internal::sarif::rule(*info));
    auto artifacts = Json::array();
    auto results = Json::array();
    for (auto const& verdict : verdicts) {
        artifacts.push_back({{"location", {{"uri", internal::sarif::uri(verdict.file)}}}});
        for (auto const& finding : verdict.findings)
            results.push_back(internal::sarif::result(verdict, finding, rules));
    }
    Json run{{"tool",
              {{"driver",
                {{"name", "bankwright"},
                 {"version", BANKWRIGHT_VERSION},
                 {"semanticVersion", BANKWRIGHT_VERSION},
                 {"rules", described}}}}},
             {"columnKind", "unicodeCodePoints"},
             {"artifacts", artifacts},
             {"results", results}};
    if (auto const left_out = internal::sarif::left_out(verdicts); !left_out.empty())
        run["invocations"] =
            Json::array({{{"executionSuccessful", true}, {"toolConfigurationNotifications", left_out}}});
    if (calls_for_cautions(verdicts)) run["properties"] = {{"cautions", cautions_for(verdicts)}};
    Json const log{
        {"$schema", "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"},
        {"version", "2.1.0"},
        {"runs", Json::array({run})}};
    return log.dump(2, ' ', false, Json::error_handler_t::replace) + '\n';
}

} // namespace bankwright
