// What sizes are enough, and what is to be cut and bought?
#include "answers.hpp"
#include "bankwright/analyses/discharge.hpp"
#include "bankwright/config/write.hpp"
#include "bankwright/reports/findings_json.hpp"
#include "bankwright/reports/sizing_json.hpp"
#include "bankwright/reports/sizing_text.hpp"

namespace bankwright::python {

namespace {

// What no size cures and makes every size meaningless.
bool stands_in_the_way(Finding const& finding) {
    auto const family = std::string_view(finding.rule).substr(0, finding.rule.find('/'));
    return finding.level == Level::error && !finding.accepted && (family == "wiring" || family == "matching");
}

} // namespace

SizeAnswer size_answer(ReadBank const& read, SizeWords const& words) {
    auto const& bank = read.whole();
    Verdict verdict = read.seen;
    std::erase_if(verdict.findings, [](Finding const& finding) { return !stands_in_the_way(finding); });
    if (!verdict.findings.empty()) throw Refused{findings_json({verdict})};
    SizingOptions options;
    if (words.runtime) options.runtime = *words.runtime * si::second;
    if (words.ambient) options.ambient = Temperature::from_value(*words.ambient);
    options.keep_strings = words.keep_strings;
    Sized sized;
    static_cast<ReportHead&>(sized) = head_of(read.seen, read.whole(), Asked::currents);
    sized.system = words.metric ? SizeSystem::metric : SizeSystem::awg;
    options.system = sized.system;
    sized.result = sizing(bank, options);
    auto const& chosen = sized.chosen().bank;
    sized.arrangement = check(chosen, {{"wiring"}, {}}).arrangement;
    sized.cuts = cut_list(chosen);
    sized.wanted = chosen.system.runtime;
    if (!missing_for_discharge(chosen)) sized.reached = discharge(chosen).runtime;
    return {sizing_json(sized), sizing_text(sized), cut_list_csv(sized), write(chosen)};
}

} // namespace bankwright::python
