// Body of findings_json.hpp.
#pragma once

#include "bankwright/reports/cautions.hpp"
#include "bankwright/reports/findings_json.hpp"
#include "bankwright/reports/json/json_values.hpp"

#include <string>

namespace bankwright {

BANKWRIGHT_INLINE std::string findings_json(Verdicts const& verdicts) {
    namespace json = internal::json;
    json::Json document{{"bankwright", "findings"}, {"version", 1}, {"files", json::Json::array()}};
    for (auto const& verdict : verdicts) {
        document["files"].push_back(
            {{"file", verdict.file},
             {"arrangement", json::text(verdict.arrangement)},
             {"counts", json::counts(count(verdict.findings))},
             {"left_out",
              {{"rules", verdict.left_out_rules.names}, {"counts", json::counts(verdict.left_out_rules.found)}}},
             {"findings", json::findings(verdict.findings)}});
    }
    if (calls_for_cautions(verdicts)) document["cautions"] = cautions_for(verdicts);
    return json::print(document);
}

} // namespace bankwright
