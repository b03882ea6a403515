#include "commands/short_circuit.hpp"

#include "bankwright/analyses/short_circuit.hpp"
#include "bankwright/reports/findings_text.hpp"
#include "bankwright/reports/short_circuit_json.hpp"
#include "bankwright/reports/short_circuit_text.hpp"
#include "common_options.hpp"
#include "reading.hpp"
#include "refusal.hpp"

using namespace bankwright;

Usage ShortCircuitCommand::usage() {
    return {.options = {bank_file(file), how_to_print(format, {Format::text, Format::json})},
            .closing = with_statuses("Example: bankwright short-circuit boat.toml")};
}

Outcome ShortCircuitCommand::run(bool colour) const {
    auto reading = read_and_check(file);
    bool const as_text = format == Format::text;
    if (auto refused = refuse_unless_whole(reading, file, as_text, colour)) return *refused;
    ShortCircuited const shorted{.file = file,
                                 .arrangement = reading.verdict.arrangement,
                                 .result = short_circuit(reading.bank),
                                 .counts = count(reading.verdict.findings)};
    return {as_text ? short_circuit_text(shorted) : short_circuit_json(shorted), {}, ExitCode::clean};
}
