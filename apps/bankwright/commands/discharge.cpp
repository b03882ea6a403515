#include "commands/discharge.hpp"

#include "bankwright/analyses/batteries_alike.hpp"
#include "bankwright/analyses/discharge.hpp"
#include "bankwright/analyses/run_range.hpp"
#include "bankwright/config/read_duty.hpp"
#include "bankwright/network/option_limits.hpp"
#include "bankwright/reports/discharge_text.hpp"
#include "bankwright/reports/findings_text.hpp"
#include "bankwright/reports/round_times.hpp"
#include "bankwright/reports/time_json.hpp"
#include "checked_file.hpp"
#include "common_options.hpp"
#include "input.hpp"
#include "moment_options.hpp"
#include "refusal.hpp"

using namespace bankwright;

Usage DischargeCommand::usage() {
    Usage usage{.options = {bank_file(file), how_to_print(format, {Format::text, Format::json})},
                .closing = with_statuses("Example: bankwright discharge boat.toml --throttle \"60 %\"")};
    auto& options = usage.options;
    add_current_and_throttle(options, moment);
    options.push_back({.names = "--duty",
                       .kind = option::FileName{duty},
                       .help = "A file of the trip's legs: [[leg]] throttle = \"60 %\", duration = \"20 min\"",
                       .stands_for = "FILE",
                       .excludes = {"--current", "--throttle"}});
    options.push_back(time_option("--for", longest, "Stop after this time, such as \"2 h\""));
    options.push_back(
        {.names = "--to",
         .kind = quantity<StateOfCharge>("--to", reserve, charge_problem),
         .help = "Charge at which the run is over, such as \"0 %\"; else the file's reserve, 50 % or 20 %",
         .stands_for = "SHARE"});
    options.push_back(time_option("--rest", rest, "Then rest for this time: batteries in parallel even out"));
    return usage;
}

Outcome DischargeCommand::run(bool color) const {
    auto checked = read_and_check(file);
    bool const as_text = format == Format::text;
    if (auto refused = refuse_unless_whole(checked, file, as_text, color)) return *refused;
    if (auto const missing = missing_for_discharge(checked.bank))
        return unusable(file, *missing + " before it can be run down");
    DischargeOptions options;
    options.moment = moment;
    if (longest) options.longest = *longest;
    if (rest) options.rest = *rest;
    options.reserve = reserve;
    if (!duty.empty()) {
        ReadLimits const limits;
        auto const input = read_input(duty, limits.bytes);
        if (!input.trouble.empty()) return unusable(duty, input.trouble);
        auto read = read_duty(input.text, limits);
        if (!read.findings.empty()) // a leg left out would be another trip
            return refused({.file = duty, .text = input.text, .findings = std::move(read.findings)}, as_text, color);
        options.duty = std::move(read.duty);
    }
    auto run = discharge(checked.bank, options);
    auto const rested = run.rest.empty() ? Duration{} : run.rest.back().time - run.rest.front().time;
    if (auto const whole = run.runtime.value() > 0.0 ? run.runtime : rested; whole.value() > 0.0) {
        options.every = round_step(whole); // only how long it is tells which times are round
        run = discharge(checked.bank, options);
    }
    Discharged discharged{through_time(checked.bank, head_of(checked, checked.bank, Asked::run,
                                                             is_part(moment) || !options.duty.legs.empty())),
                          std::move(run),
                          {}};
    options.rest = options.every = {};
    discharged.range = run_range(checked.bank, options);
    if (auto const alike = with_batteries_alike(checked.bank)) discharged.alike = discharge(*alike, options).runtime;
    bool const ran = discharged.run.end != RunEnd::no_operating_point || discharged.run.samples.size() > 1;
    return {
        as_text ? discharge_text(discharged) : discharge_json(discharged), {}, ran ? ExitCode::clean : ExitCode::found};
}
