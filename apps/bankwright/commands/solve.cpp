#include "commands/solve.hpp"

#include "bankwright/analyses/operating_point.hpp"
#include "bankwright/bank/locate.hpp"
#include "bankwright/reports/findings_text.hpp"
#include "bankwright/reports/solution_json.hpp"
#include "bankwright/reports/solution_text.hpp"
#include "bankwright/rules/solving.hpp"
#include "checked_file.hpp"
#include "common_options.hpp"
#include "moment_options.hpp"
#include "refusal.hpp"

using namespace bankwright;

Usage SolveCommand::usage() {
    Usage usage{.options = {bank_file(file), how_to_print(format, {Format::text, Format::json})},
                .closing = with_statuses("Example: bankwright solve boat.toml --current \"40 A\"")};
    add_moment(usage.options, moment);
    return usage;
}

Outcome SolveCommand::run(bool color) const {
    auto checked = read_and_check(file);
    bool const as_text = format == Format::text;
    if (auto refused = refuse_unless_whole(checked, file, as_text, color)) return *refused;
    Solved solved{head_of(checked, checked.bank, Asked::currents, is_part(moment)),
                  operating_point(checked.bank, {.moment = moment}),
                  {}};
    say_unsolved(checked.bank, solved.point, solved.findings);
    locate(solved.findings, checked.map);
    auto out = as_text ? solution_text(solved, {.color = color}) : solution_json(solved);
    bool const is_solved = solved.point.status == solver::Status::solved;
    return {std::move(out), {}, is_solved ? ExitCode::clean : ExitCode::found};
}
