#include "commands/solve.hpp"

#include "bankwright/analyses/operating_point.hpp"
#include "bankwright/bank/locate.hpp"
#include "bankwright/reports/findings_text.hpp"
#include "bankwright/reports/solution_json.hpp"
#include "bankwright/reports/solution_text.hpp"
#include "bankwright/rules/solving.hpp"
#include "common_options.hpp"
#include "moment_options.hpp"
#include "reading.hpp"
#include "refusal.hpp"

using namespace bankwright;

Usage SolveCommand::usage() {
    Usage usage{.options = {bank_file(file), how_to_print(format, {Format::text, Format::json})},
                .closing = with_statuses("Example: bankwright solve boat.toml --current \"40 A\"")};
    add_moment(usage.options, moment);
    return usage;
}

Outcome SolveCommand::run(bool colour) const {
    auto reading = read_and_check(file);
    bool const as_text = format == Format::text;
    if (auto refused = refuse_unless_whole(reading, file, as_text, colour)) return *refused;
    Solved solved{.file = file,
                  .text = reading.verdict.text,
                  .arrangement = reading.verdict.arrangement,
                  .point = operating_point(reading.bank, {.moment = moment}),
                  .counts = count(reading.verdict.findings),
                  .findings = {}};
    say_unsolved(reading.bank, solved.point, solved.findings);
    locate(solved.findings, reading.map);
    auto out = as_text ? solution_text(solved, {.colour = colour}) : solution_json(solved);
    bool const is_solved = solved.point.status == solver::Status::solved;
    return {std::move(out), {}, is_solved ? ExitCode::clean : ExitCode::found};
}
