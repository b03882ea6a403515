#include "commands/hookup.hpp"

#include "bankwright/analyses/hookup.hpp"
#include "bankwright/reports/findings_text.hpp"
#include "bankwright/reports/hookup_json.hpp"
#include "bankwright/reports/hookup_text.hpp"
#include "checked_file.hpp"
#include "common_options.hpp"
#include "meter_options.hpp"
#include "refusal.hpp"

#include <algorithm>
#include <iterator>
#include <string_view>

using namespace bankwright;

Usage HookupCommand::usage() {
    Usage usage{.options = {bank_file(file), how_to_print(format, {Format::text, Format::json})},
                .closing = with_statuses("Example: bankwright hookup boat.toml --meter \"0.8 % + 1 digit\"")};
    add_meter(usage.options, options);
    return usage;
}

namespace {

// A short, wrong polarity, a battery turned, voltages that clash. What is wrong in another way is for `check` to say.
bool hurts_in_the_work(std::string_view rule) {
    constexpr std::string_view rules[] = {"wiring/shorted-loop",  "wiring/shorted-battery", "wiring/reversed-battery",
                                          "wiring/reversed-load", "wiring/system-voltage",  "wiring/unequal-strings",
                                          "wiring/open-circuit",  "wiring/unused-battery",  "matching/mixed-voltage",
                                          "charging/polarity",    "charging/not-isolated",  "load/over-voltage"};
    return std::find(std::begin(rules), std::end(rules), rule) != std::end(rules);
}

} // namespace

Outcome HookupCommand::run(bool color) const {
    auto checked = read_and_check(file);
    bool const as_text = format == Format::text;
    if (auto refused = refuse_unless_whole(checked, file, as_text, color)) return *refused;
    HookedUp hooked{head_of(checked), {}, options, {}, {}};
    // Nobody is told how to put together what must not be put together; an error that somebody accepted with a reason
    // stands in nobody's way unless it is a short.
    auto const& findings = checked.findings;
    auto const worst = std::find_if(findings.begin(), findings.end(), [](Finding const& finding) {
        return finding.level == Level::error && !finding.accepted && hurts_in_the_work(finding.rule);
    });
    if (worst != findings.end()) {
        hooked.findings.push_back(*worst);
    } else if (auto const unfit = unfit_for_hookup(checked.bank)) {
        auto outcome = unusable(file, "no hook-up: " + *unfit);
        outcome.status = ExitCode::found;
        return outcome;
    } else {
        hooked.result = hookup(checked.bank, options);
    }
    hooked.bank = std::move(checked.bank);
    auto const status = hooked.result ? ExitCode::clean : ExitCode::found;
    return {as_text ? hookup_text(hooked, {.color = color}) : hookup_json(hooked), {}, status};
}
