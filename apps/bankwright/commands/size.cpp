#include "commands/size.hpp"

#include "bankwright/analyses/discharge.hpp"
#include "bankwright/reports/sizing_json.hpp"
#include "bankwright/reports/sizing_text.hpp"
#include "reading.hpp"
#include "refusal.hpp"

#include <algorithm>
#include <string_view>

using namespace bankwright;

namespace {

// What no size cures and makes every size meaningless.
bool stands_in_the_way(Finding const& finding) {
    auto const family = std::string_view(finding.rule).substr(0, finding.rule.find('/'));
    return finding.level == Level::error && !finding.accepted && (family == "wiring" || family == "matching");
}

std::string render(Sized const& sized, Format format) {
    switch (format) {
    case Format::json:
        return sizing_json(sized);
    case Format::markdown:
        return sizing_markdown(sized);
    case Format::csv:
        return cut_list_csv(sized);
    default:
        return sizing_text(sized);
    }
}

} // namespace

Outcome run(SizeRequest const& request, bool colour) {
    auto reading = read_and_check(request.file);
    bool const as_json = request.format == Format::json;
    if (auto refused = refuse_unless_whole(reading, request.file, !as_json, colour)) return *refused;
    auto& findings = reading.verdict.findings;
    if (std::any_of(findings.begin(), findings.end(), stands_in_the_way)) {
        findings.erase(std::remove_if(findings.begin(), findings.end(),
                                      [](Finding const& finding) { return !stands_in_the_way(finding); }),
                       findings.end());
        auto outcome = refused(std::move(reading.verdict), !as_json, colour);
        outcome.status = ExitCode::found;
        return outcome;
    }
    Sized sized;
    sized.file = request.file;
    sized.system = request.options.system;
    auto options = request.options;
    options.system = SizeSystem::awg;
    sized.gauges = sizing(reading.bank, options);
    options.system = SizeSystem::metric;
    sized.sections = sizing(reading.bank, options);
    auto const& bank = sized.chosen().bank;
    sized.arrangement = check(bank, {{"wiring"}, {}}).arrangement;
    sized.cuts = cut_list(bank);
    sized.wanted = bank.system.runtime;
    if (!missing_for_discharge(bank)) sized.reached = discharge(bank).runtime;
    auto const status = sized.chosen().left.empty() ? ExitCode::clean : ExitCode::found;
    return {render(sized, request.format), {}, status};
}
