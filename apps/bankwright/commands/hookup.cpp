#include "commands/hookup.hpp"

#include "bankwright/analyses/hookup.hpp"
#include "bankwright/analyses/hookup_judge.hpp"
#include "bankwright/config/write_log.hpp"
#include "bankwright/reports/findings_text.hpp"
#include "bankwright/reports/hookup_json.hpp"
#include "bankwright/reports/hookup_text.hpp"
#include "bankwright/reports/log_json.hpp"
#include "bankwright/reports/log_text.hpp"
#include "checked_file.hpp"
#include "common_options.hpp"
#include "hookup_dialogue.hpp"
#include "kept_log.hpp"
#include "meter_options.hpp"
#include "refusal.hpp"

#include <algorithm>

using namespace bankwright;

Usage HookupCommand::usage() {
    Usage usage{.options = {bank_file(file),
                            how_to_print(format, {Format::text, Format::json}),
                            {.names = "--log",
                             .kind = option::FileName{log},
                             .help = "Ask for each reading, say go or stop, and keep the answers in this file; with "
                                     "--format json, or where nobody can answer, judge what it holds",
                             .stands_for = "LOG"}},
                .closing = with_statuses("Example: bankwright hookup boat.toml --meter \"0.8 % + 1 digit\""),
                .problem = [this] {
                    return read_once({file, log});
                }};
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
    } else if (!log.empty()) {
        return run_with_log(std::move(checked), color);
    } else {
        hooked.result = hookup(checked.bank, options);
        hooked.findings = said_with_hookup(findings);
    }
    hooked.bank = std::move(checked.bank);
    auto const status = hooked.result ? ExitCode::clean : ExitCode::found;
    return {as_text ? hookup_text(hooked, {.color = color}) : hookup_json(hooked), {}, status};
}

Outcome HookupCommand::run_with_log(CheckedFile checked, bool color) const {
    bool const as_text = format == Format::text;
    bool const is_asked = as_text && file != "-" && log != "-" && somebody_answers();
    if (auto refused = refuse_to_write_over(checked, file, log, "log")) return *refused;
    KeptLog kept;
    if (auto refused = read_kept_log(kept, log, checked.bank, is_asked, as_text, color)) return *refused;
    LoggedHookup logged{head_of(checked), checked.bank, {}, log, std::move(kept.log), {}, {}, {}, {}};
    if (kept.is_new) begin_log(logged.log, checked.bank, options);
    logged.options = hookup_options(logged.log, options);
    HookupJudge const judge(checked.bank, logged.options);
    logged.sheet = judge.sheet();
    logged.questions = judge.questions();
    logged.changed = changed_since(logged.log.marks, checked.bank);
    if (is_asked) return ask_hookup(judge, std::move(logged), color);
    logged.judged = judge.judge(logged.log.entries);
    auto const status = logged.judged.state == HookupState::stopped ? ExitCode::found : ExitCode::clean;
    return {as_text ? log_text(logged, {.color = color}) : log_json(logged), {}, status};
}
