#include "commands/solve.hpp"

#include "bankwright/analyses/operating_point.hpp"
#include "bankwright/bank/locate.hpp"
#include "bankwright/reports/findings_text.hpp"
#include "bankwright/reports/solution_json.hpp"
#include "bankwright/reports/solution_text.hpp"
#include "bankwright/rules/solving.hpp"
#include "reading.hpp"
#include "refusal.hpp"

using namespace bankwright;

Outcome run(SolveRequest const& request, bool colour) {
    auto reading = read_and_check(request.file);
    bool const as_text = request.format == Format::text;
    if (auto refused = refuse_unless_whole(reading, request.file, as_text, colour)) return *refused;
    Solved solved{.file = request.file,
                  .text = reading.verdict.text,
                  .arrangement = reading.verdict.arrangement,
                  .point = operating_point(reading.bank, {.moment = request.moment}),
                  .counts = count(reading.verdict.findings),
                  .findings = {}};
    say_unsolved(reading.bank, solved.point, solved.findings);
    locate(solved.findings, reading.map);
    auto out = as_text ? solution_text(solved, {.colour = colour}) : solution_json(solved);
    bool const is_solved = solved.point.status == solver::Status::solved;
    return {std::move(out), {}, is_solved ? ExitCode::clean : ExitCode::found};
}
