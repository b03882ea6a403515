#include "commands/discharge.hpp"

#include "bankwright/analyses/batteries_alike.hpp"
#include "bankwright/analyses/discharge.hpp"
#include "bankwright/config/read_duty.hpp"
#include "bankwright/reports/discharge_text.hpp"
#include "bankwright/reports/findings_text.hpp"
#include "bankwright/reports/round_times.hpp"
#include "bankwright/reports/time_json.hpp"
#include "input.hpp"
#include "reading.hpp"
#include "refusal.hpp"
#include "through_time.hpp"

using namespace bankwright;

Outcome run(DischargeRequest const& request, bool colour) {
    auto reading = read_and_check(request.file);
    bool const as_text = request.format == Format::text;
    if (auto refused = refuse_unless_whole(reading, request.file, as_text, colour)) return *refused;
    if (auto const missing = missing_for_discharge(reading.bank))
        return unusable(request.file, *missing + " before it can be run down");
    DischargeOptions options;
    options.moment = request.moment;
    if (request.longest) options.longest = *request.longest;
    if (request.rest) options.rest = *request.rest;
    if (!request.duty.empty()) {
        ReadLimits const limits;
        auto const input = read_input(request.duty, limits.bytes);
        if (!input.trouble.empty()) return unusable(request.duty, input.trouble);
        auto read = read_duty(input.text, limits);
        if (!read.findings.empty()) // a leg left out would be another trip
            return refused({.file = request.duty, .text = input.text, .findings = std::move(read.findings)}, as_text,
                           colour);
        options.duty = std::move(read.duty);
    }
    auto run = discharge(reading.bank, options);
    auto const rested = run.rest.empty() ? Duration{} : run.rest.back().time - run.rest.front().time;
    if (auto const whole = run.runtime.value() > 0.0 ? run.runtime : rested; whole.value() > 0.0) {
        options.every = round_step(whole); // only how long it is tells which times are round
        run = discharge(reading.bank, options);
    }
    Discharged discharged{through_time(request.file, reading), std::move(run), {}};
    options.rest = options.every = {};
    if (auto const alike = with_batteries_alike(reading.bank)) discharged.alike = discharge(*alike, options).runtime;
    bool const ran = discharged.run.end != RunEnd::no_operating_point || discharged.run.samples.size() > 1;
    return {
        as_text ? discharge_text(discharged) : discharge_json(discharged), {}, ran ? ExitCode::clean : ExitCode::found};
}
