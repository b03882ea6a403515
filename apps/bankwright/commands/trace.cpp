#include "commands/trace.hpp"

#include "bankwright/analyses/trace.hpp"
#include "bankwright/config/read_readings.hpp"
#include "bankwright/findings/order.hpp"
#include "bankwright/reports/findings_text.hpp"
#include "bankwright/reports/trace_json.hpp"
#include "bankwright/reports/trace_text.hpp"
#include "input.hpp"
#include "reading.hpp"
#include "refusal.hpp"

using namespace bankwright;

Outcome run(TraceRequest const& request, bool colour) {
    auto reading = read_and_check(request.file);
    bool const as_text = request.format == Format::text;
    if (auto refused = refuse_unless_whole(reading, request.file, as_text, colour)) return *refused;
    if (auto const unfit = unfit_for_trace(reading.bank)) return unusable(request.file, "no trace: " + *unfit);
    ReadLimits const limits;
    auto const input = read_input(request.readings, limits.bytes);
    if (!input.trouble.empty()) return unusable(request.readings, input.trouble);
    auto read = read_readings(input.text, reading.bank, limits);
    if (!read.findings.empty()) // a reading left out would be another answer
        return refused({.file = request.readings, .text = input.text, .findings = std::move(read.findings)}, as_text,
                       colour);
    TraceOptions options;
    options.meter = read.sheet.meter;
    options.clamp = read.sheet.clamp;
    Traced traced;
    traced.file = request.file;
    traced.result = trace(reading.bank, readings_of(read.sheet), options);
    traced.sheet = std::move(read.sheet);
    bool const as_drawn = traced.result.diagnoses.front().faults.empty();
    return {as_text ? trace_text(traced, {.colour = colour}) : trace_json(traced),
            {},
            as_drawn ? ExitCode::clean : ExitCode::found};
}
