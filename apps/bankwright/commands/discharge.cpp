#include "commands/discharge.hpp"

#include "reading.hpp"

#include "bankwright/analyses/discharge.hpp"
#include "bankwright/reports/discharge_text.hpp"
#include "bankwright/reports/json.hpp"
#include "bankwright/reports/text.hpp"
#include "bankwright/text/escape.hpp"

using namespace bankwright;

Outcome run(DischargeRequest const& request, bool colour) {
    auto reading = read_and_check(request.file);
    auto const trouble = [&](std::string const& what) {
        return Outcome{{}, "bankwright: " + terminal_safe(request.file) + ": " + what + "\n", ExitCode::unusable};
    };
    if (!reading.trouble.empty()) return trouble(reading.trouble);
    bool const as_text = request.format == Format::text;
    if (!reading.as_written) { // running what could be understood of it would answer another question
        Verdicts const verdicts{std::move(reading.verdict)};
        auto out = as_text ? findings_text(verdicts, {.colour = colour}) : findings_json(verdicts);
        return {std::move(out), reading.remark, ExitCode::unusable};
    }
    if (auto const missing = missing_for_discharge(reading.bank))
        return trouble(*missing + " before it can be run down");
    DischargeOptions options;
    options.moment = request.moment;
    if (request.longest) options.longest = *request.longest;
    Discharged discharged;
    discharged.file = request.file;
    discharged.arrangement = reading.verdict.arrangement;
    discharged.run = discharge(reading.bank, options);
    discharged.counts = count(reading.verdict.findings);
    for (auto const& battery : reading.bank.batteries) {
        discharged.batteries.push_back(battery.id);
        discharged.capacities.push_back(battery.capacity);
    }
    bool const ran = discharged.run.end != RunEnd::no_operating_point || discharged.run.samples.size() > 1;
    return {
        as_text ? discharge_text(discharged) : discharge_json(discharged), {}, ran ? ExitCode::clean : ExitCode::found};
}
