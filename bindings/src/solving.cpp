// Volts, amperes and watts at one moment, what flows into a short, and what source the bank is from two terminals.
#include "bankwright/rules/solving.hpp"

#include "answers.hpp"
#include "bankwright/analyses/operating_point.hpp"
#include "bankwright/analyses/seen_from.hpp"
#include "bankwright/analyses/short_circuit.hpp"
#include "bankwright/bank/locate.hpp"
#include "bankwright/reports/short_circuit_json.hpp"
#include "bankwright/reports/solution_json.hpp"

#include <limits>
#include <stdexcept>

namespace bankwright::python {

Readings solve_answer(ReadBank const& read, MomentWords const& words) {
    auto const& bank = read.whole();
    Solved solved{head_of(read.seen, bank, Asked::currents, is_part(moment_of(words))),
                  operating_point(bank, {.moment = moment_of(words)}),
                  {}};
    say_unsolved(bank, solved.point, solved.findings);
    locate(solved.findings, read.seen.map);
    Readings readings;
    for (auto const& terminal : solved.point.terminals)
        readings.volts.push_back(terminal.voltage ? terminal.voltage->value()
                                                  : std::numeric_limits<double>::quiet_NaN());
    for (auto const& part : solved.point.parts) {
        readings.amperes.push_back(part.current.value());
        readings.across.push_back(part.voltage.value());
        readings.watts.push_back(part.power.value());
    }
    readings.document = solution_json(solved);
    return readings;
}

std::string short_circuit_answer(ReadBank const& read) {
    return short_circuit_json({head_of(read.seen, read.whole(), Asked::currents), short_circuit(read.whole())});
}

std::optional<Source> seen_from_answer(ReadBank const& read, std::string const& plus, std::string const& minus) {
    auto const seen = seen_from(read.whole(), plus, minus);
    if (seen.status != solver::Status::solved) throw std::invalid_argument("the bank has no operating point");
    if (!seen.source) return std::nullopt;
    Source source{seen.source->open.value(), seen.source->resistance.value(), {}};
    if (seen.source->short_current) source.short_amps = seen.source->short_current->value();
    return source;
}

} // namespace bankwright::python
