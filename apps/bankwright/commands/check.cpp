#include "commands/check.hpp"

#include "reading.hpp"

#include "bankwright/reports/json.hpp"
#include "bankwright/reports/junit.hpp"
#include "bankwright/reports/sarif.hpp"
#include "bankwright/reports/text.hpp"
#include "bankwright/rules/catalog.hpp"
#include "bankwright/text/escape.hpp"

using namespace bankwright;

namespace {

std::string print(Verdicts const& verdicts, CheckRequest const& request, bool colour) {
    switch (request.format) {
    case Format::text:
        return findings_text(verdicts, {.colour = colour, .all = request.all});
    case Format::json:
        return findings_json(verdicts);
    case Format::sarif:
        return findings_sarif(verdicts, all_rules());
    case Format::junit:
        return findings_junit(verdicts, request.fail_on);
    }
    return {};
}

} // namespace

Outcome run(CheckRequest const& request, bool colour) {
    Outcome outcome;
    Verdicts verdicts;
    for (auto const& file : request.files) {
        auto reading = read_and_check(file, request.rules);
        if (!reading.readable) outcome.worsen(ExitCode::unusable);
        outcome.err += reading.remark;
        if (!reading.trouble.empty()) {
            outcome.err += "bankwright: " + terminal_safe(file) + ": " + reading.trouble + "\n";
            continue;
        }
        if (count_from(request.fail_on, count(reading.verdict.findings)) > 0) outcome.worsen(ExitCode::found);
        verdicts.push_back(std::move(reading.verdict));
    }
    if (!verdicts.empty()) outcome.out = print(verdicts, request, colour);
    return outcome;
}
