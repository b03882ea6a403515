#include "commands/trace.hpp"

#include "bankwright/analyses/trace.hpp"
#include "bankwright/config/read_readings.hpp"
#include "bankwright/findings/order.hpp"
#include "bankwright/reports/findings_text.hpp"
#include "bankwright/reports/trace_json.hpp"
#include "bankwright/reports/trace_text.hpp"
#include "checked_file.hpp"
#include "common_options.hpp"
#include "input.hpp"
#include "refusal.hpp"

using namespace bankwright;

Usage TraceCommand::usage() {
    return {.options = {{.names = "file",
                         .kind = option::Text{file},
                         .help = "A bank file, as the bank should be; - is standard input",
                         .stands_for = "FILE",
                         .is_required = true},
                        {.names = "readings",
                         .kind = option::Text{readings},
                         .help = "A file of readings; - is standard input",
                         .stands_for = "READINGS",
                         .is_required = true},
                        how_to_print(format, {Format::text, Format::json})},
            .closing = with_statuses("Example: bankwright trace boat.toml readings.toml"),
            .problem = [this] {
                return read_once({file, readings});
            }};
}

Outcome TraceCommand::run(bool color) const {
    auto checked = read_alone(file);
    bool const as_text = format == Format::text;
    if (auto refused = refuse_unless_whole(checked, file, as_text, color)) return *refused;
    if (auto const unfit = unfit_for_trace(checked.bank)) return unusable(file, "no trace: " + *unfit);
    ReadLimits const limits;
    auto const input = read_input(readings, limits.bytes);
    if (!input.trouble.empty()) return unusable(readings, input.trouble);
    auto read = read_readings(input.text, checked.bank, limits);
    if (!read.findings.empty()) // a reading left out would be another answer
        return refused({.file = readings, .text = input.text, .findings = std::move(read.findings)}, as_text, color);
    Traced traced{head_of(checked), {}, {}};
    traced.result = trace(checked.bank, readings_of(read.sheet), trace_options(read.sheet));
    traced.sheet = std::move(read.sheet);
    bool const as_described = traced.result.diagnoses.front().faults.empty();
    return {as_text ? trace_text(traced, {.color = color}) : trace_json(traced),
            {},
            as_described ? ExitCode::clean : ExitCode::found};
}
