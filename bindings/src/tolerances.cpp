// How far do the answers spread?
#include "answers.hpp"
#include "bankwright/analyses/tolerance.hpp"
#include "bankwright/reports/tolerance_json.hpp"
#include "bankwright/reports/tolerance_text.hpp"
#include "bankwright/rules/rule_shares.hpp"

namespace bankwright::python {

std::string tolerance_answer(ReadBank const& read, MomentWords const& moment, SampleWords const& words) {
    auto const& bank = read.whole();
    Toleranced toleranced{head_of(read.seen, bank, Asked::run, is_part(moment_of(moment))), {}, {}, {}};
    toleranced.options.moment = moment_of(moment);
    toleranced.options.samples = words.samples;
    toleranced.options.seed = words.seed;
    toleranced.options.threads = words.threads;
    toleranced.result = tolerance(bank, toleranced.options);
    if (toleranced.result.solved && words.checked > 0) {
        RuleShareOptions options;
        options.spreads = toleranced.options.spreads;
        options.samples = words.checked;
        options.seed = words.seed;
        toleranced.shares = rule_shares(bank, options);
    }
    return tolerance_json(toleranced);
}

} // namespace bankwright::python
