#include "commands/size.hpp"

#include "bankwright/analyses/discharge.hpp"
#include "bankwright/reports/sizing_json.hpp"
#include "bankwright/reports/sizing_text.hpp"
#include "checked_file.hpp"
#include "common_options.hpp"
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

Usage SizeCommand::usage() {
    return {
        .options = {bank_file(file),
                    how_to_print(format, {Format::text, Format::markdown, Format::csv, Format::json}),
                    {.names = "--sizes",
                     .kind = choice(options.system,
                                    std::vector<std::pair<std::string, SizeSystem>>{{"AWG", SizeSystem::awg},
                                                                                    {"mm2", SizeSystem::metric}},
                                    "AWG"),
                     .help = "Sizes of the cut list: AWG or mm2",
                     .stands_for = "SYSTEM"},
                    time_option("--runtime", options.runtime, "How long it must run, such as \"2 h\"; else the file's"),
                    {.names = "--ambient",
                     .kind = quantity<Temperature>("--ambient", options.ambient, ambient_problem),
                     .help = "The highest temperature to size for, such as \"40 degC\"; else the file's",
                     .stands_for = "TEMPERATURE"},
                    {.names = "--keep-strings",
                     .kind = flag(options.keep_strings),
                     .help = "Leave the number of strings as described"}},
        .closing = with_statuses("Example: bankwright size boat.toml --runtime \"2 h\" --format markdown")};
}

Outcome SizeCommand::run(bool color) const {
    auto checked = read_and_check(file);
    bool const as_json = format == Format::json;
    if (auto refused = refuse_unless_whole(checked, file, !as_json, color)) return *refused;
    auto& findings = checked.findings;
    if (std::any_of(findings.begin(), findings.end(), stands_in_the_way)) {
        findings.erase(std::remove_if(findings.begin(), findings.end(),
                                      [](Finding const& finding) { return !stands_in_the_way(finding); }),
                       findings.end());
        auto outcome = refused(checked, !as_json, color);
        outcome.status = ExitCode::found;
        return outcome;
    }
    Sized sized;
    static_cast<ReportHead&>(sized) = head_of(checked, checked.bank, Asked::currents);
    sized.system = options.system;
    sized.result = sizing(checked.bank, options);
    auto const& bank = sized.chosen().bank;
    sized.arrangement = check(bank, {{"wiring"}, {}}).arrangement;
    sized.cuts = cut_list(bank);
    sized.wanted = bank.system.runtime;
    if (!missing_for_discharge(bank)) sized.reached = discharge(bank).runtime;
    auto const status = sized.chosen().left.empty() ? ExitCode::clean : ExitCode::found;
    return {render(sized, format), {}, status};
}
