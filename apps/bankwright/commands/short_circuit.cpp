#include "commands/short_circuit.hpp"

#include "bankwright/analyses/short_circuit.hpp"
#include "bankwright/reports/findings_text.hpp"
#include "bankwright/reports/short_circuit_json.hpp"
#include "bankwright/reports/short_circuit_text.hpp"
#include "reading.hpp"
#include "refusal.hpp"

using namespace bankwright;

Outcome run(ShortCircuitRequest const& request, bool colour) {
    auto reading = read_and_check(request.file);
    bool const as_text = request.format == Format::text;
    if (auto refused = refuse_unless_whole(reading, request.file, as_text, colour)) return *refused;
    ShortCircuited const shorted{.file = request.file,
                                 .arrangement = reading.verdict.arrangement,
                                 .result = short_circuit(reading.bank),
                                 .counts = count(reading.verdict.findings)};
    return {as_text ? short_circuit_text(shorted) : short_circuit_json(shorted), {}, ExitCode::clean};
}
