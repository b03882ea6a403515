#include "commands/short_circuit.hpp"

#include "reading.hpp"

#include "bankwright/analyses/short_circuit.hpp"
#include "bankwright/reports/json.hpp"
#include "bankwright/reports/short_circuit_json.hpp"
#include "bankwright/reports/short_circuit_text.hpp"
#include "bankwright/reports/text.hpp"
#include "bankwright/text/escape.hpp"

using namespace bankwright;

Outcome run(ShortCircuitRequest const& request, bool colour) {
    auto reading = read_and_check(request.file);
    if (!reading.trouble.empty())
        return {{}, "bankwright: " + terminal_safe(request.file) + ": " + reading.trouble + "\n", ExitCode::unusable};
    bool const as_text = request.format == Format::text;
    if (!reading.as_written) { // the faults of what could be understood of it would be another bank's
        Verdicts const verdicts{std::move(reading.verdict)};
        auto out = as_text ? findings_text(verdicts, {.colour = colour}) : findings_json(verdicts);
        return {std::move(out), reading.remark, ExitCode::unusable};
    }
    ShortCircuited const shorted{.file = request.file,
                                 .arrangement = reading.verdict.arrangement,
                                 .result = short_circuit(reading.bank),
                                 .counts = count(reading.verdict.findings)};
    return {as_text ? short_circuit_text(shorted) : short_circuit_json(shorted), {}, ExitCode::clean};
}
