#include "commands/hookup.hpp"

#include "reading.hpp"

#include "bankwright/reports/hookup_json.hpp"
#include "bankwright/reports/hookup_text.hpp"
#include "bankwright/reports/json.hpp"
#include "bankwright/reports/text.hpp"
#include "bankwright/text/escape.hpp"

#include <algorithm>

using namespace bankwright;

Outcome run(HookupRequest const& request, bool colour) {
    auto reading = read_and_check(request.file);
    auto const trouble = [&](std::string const& what) {
        return Outcome{{}, "bankwright: " + terminal_safe(request.file) + ": " + what + "\n", ExitCode::unusable};
    };
    if (!reading.trouble.empty()) return trouble(reading.trouble);
    bool const as_text = request.format == Format::text;
    if (!reading.as_written) { // a hook-up of what could be understood of it would be another bank's
        Verdicts const verdicts{std::move(reading.verdict)};
        auto out = as_text ? findings_text(verdicts, {.colour = colour}) : findings_json(verdicts);
        return {std::move(out), reading.remark, ExitCode::unusable};
    }
    HookedUp hooked;
    hooked.file = request.file;
    hooked.text = reading.verdict.text;
    hooked.arrangement = reading.verdict.arrangement;
    hooked.options = request.options;
    hooked.counts = count(reading.verdict.findings);
    // Nobody is told how to put together what must not be put together; an error that somebody accepted with a reason
    // stands in nobody's way unless it is a short.
    auto const& findings = reading.verdict.findings;
    auto const worst = std::find_if(findings.begin(), findings.end(), [](Finding const& finding) {
        return finding.level == Level::error && !finding.accepted;
    });
    if (worst != findings.end()) {
        hooked.findings.push_back(*worst);
    } else if (auto const unfit = unfit_for_hookup(reading.bank)) {
        return {{}, "bankwright: " + terminal_safe(request.file) + ": no hook-up: " + *unfit + "\n", ExitCode::found};
    } else {
        hooked.result = hookup(reading.bank, request.options);
    }
    hooked.bank = std::move(reading.bank);
    auto const status = hooked.result ? ExitCode::clean : ExitCode::found;
    return {as_text ? hookup_text(hooked, {.colour = colour}) : hookup_json(hooked), {}, status};
}
