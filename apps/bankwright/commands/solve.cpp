#include "commands/solve.hpp"

#include "reading.hpp"

#include "bankwright/analyses/operating_point.hpp"
#include "bankwright/findings/rule_id.hpp"
#include "bankwright/reports/json.hpp"
#include "bankwright/reports/solution_text.hpp"
#include "bankwright/reports/text.hpp"
#include "bankwright/text/escape.hpp"

#include <algorithm>

using namespace bankwright;

namespace {

// A file that says something else than its author meant is not solved: the answer would be a guess.
bool is_misread(Verdict const& verdict) {
    return std::any_of(verdict.findings.begin(), verdict.findings.end(), [](Finding const& finding) {
        return finding.level == Level::error && family(finding.rule) == "file";
    });
}

} // namespace

Outcome run(SolveRequest const& request, bool colour) {
    auto judged = judge(request.file);
    if (!judged.trouble.empty())
        return {{}, "bankwright: " + terminal_safe(request.file) + ": " + judged.trouble + "\n", ExitCode::unusable};
    bool const as_text = request.format == Format::text;
    if (!judged.readable || is_misread(judged.verdict)) {
        Verdicts const verdicts{std::move(judged.verdict)};
        return {
            as_text ? findings_text(verdicts, {.colour = colour}) : findings_json(verdicts), {}, ExitCode::unusable};
    }
    Solved const solved{.file = request.file,
                        .arrangement = judged.verdict.arrangement,
                        .point = operating_point(judged.bank, {.moment = request.moment}),
                        .counts = count(judged.verdict.findings),
                        .findings = {}};
    auto const status = solved.point.status == solver::Status::solved ? ExitCode::clean : ExitCode::found;
    return {as_text ? solution_text(solved, {.colour = colour}) : solution_json(solved), {}, status};
}
