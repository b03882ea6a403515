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

using namespace bankwright;

Usage HookupCommand::usage() {
    Usage usage{.options = {bank_file(file), how_to_print(format, {Format::text, Format::json})},
                .closing = with_statuses("Example: bankwright hookup boat.toml --meter \"0.8 % + 1 digit\"")};
    add_meter(usage.options, options);
    return usage;
}

Outcome HookupCommand::run(bool color) const {
    auto checked = read_and_check(file);
    bool const as_text = format == Format::text;
    if (auto refused = refuse_unless_whole(checked, file, as_text, color)) return *refused;
    HookedUp hooked{head_of(checked), {}, options, {}, {}};
    // Nobody is told how to put together what hurts when it is; what is wrong in another way is said above the sheet.
    // An error that somebody accepted with a reason stands in nobody's way unless it is a short.
    auto const& findings = checked.findings;
    auto const worst = std::find_if(findings.begin(), findings.end(), stops_hookup);
    if (worst != findings.end()) {
        hooked.findings.push_back(*worst);
    } else if (auto const unfit = unfit_for_hookup(checked.bank)) {
        auto outcome = unusable(file, "no hook-up: " + *unfit);
        outcome.status = ExitCode::found;
        return outcome;
    } else {
        hooked.result = hookup(checked.bank, options);
        hooked.findings = said_with_hookup(findings);
    }
    hooked.bank = std::move(checked.bank);
    auto const status = hooked.result ? ExitCode::clean : ExitCode::found;
    return {as_text ? hookup_text(hooked, {.color = color}) : hookup_json(hooked), {}, status};
}
