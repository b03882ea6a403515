#include "commands/tolerance.hpp"

#include "bankwright/reports/tolerance_json.hpp"
#include "bankwright/reports/tolerance_text.hpp"
#include "bankwright/rules/rule_shares.hpp"
#include "progress.hpp"
#include "reading.hpp"
#include "refusal.hpp"

#include <utility>

using namespace bankwright;

Outcome run(ToleranceRequest const& request, bool colour) {
    auto reading = read_and_check(request.file);
    bool const as_text = request.format == Format::text;
    if (auto refused = refuse_unless_whole(reading, request.file, as_text, colour)) return *refused;
    Toleranced toleranced;
    toleranced.file = request.file;
    toleranced.arrangement = reading.verdict.arrangement;
    toleranced.options = request.options;
    toleranced.result = tolerance(reading.bank, request.options);
    if (toleranced.result.solved && request.checked > 0) {
        Progress progress(request.checked, "banks");
        RuleShareOptions options;
        options.spreads = request.options.spreads;
        options.draws = request.checked;
        options.seed = request.options.seed;
        options.on_draw = [&](std::size_t done) { progress.at(done - 1); };
        toleranced.shares = rule_shares(reading.bank, options);
    }
    auto const status = toleranced.result.solved ? ExitCode::clean : ExitCode::found;
    return {as_text ? tolerance_text(toleranced) : tolerance_json(toleranced), {}, status};
}
