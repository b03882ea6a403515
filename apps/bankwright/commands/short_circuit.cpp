#include "commands/short_circuit.hpp"

#include "bankwright/analyses/short_circuit.hpp"
#include "bankwright/reports/findings_text.hpp"
#include "bankwright/reports/short_circuit_json.hpp"
#include "bankwright/reports/short_circuit_text.hpp"
#include "checked_file.hpp"
#include "common_options.hpp"
#include "refusal.hpp"

using namespace bankwright;

Usage ShortCircuitCommand::usage() {
    return {.options = {bank_file(file), how_to_print(format, {Format::text, Format::json})},
            .closing = with_statuses("Example: bankwright short-circuit boat.toml")};
}

Outcome ShortCircuitCommand::run(bool color) const {
    auto checked = read_and_check(file);
    bool const as_text = format == Format::text;
    if (auto refused = refuse_unless_whole(checked, file, as_text, color)) return *refused;
    ShortCircuited const shorted{head_of(checked, checked.bank, Asked::currents), short_circuit(checked.bank)};
    return {as_text ? short_circuit_text(shorted) : short_circuit_json(shorted), {}, ExitCode::clean};
}
