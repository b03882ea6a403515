// What is wrong with it, how is it written, and how does it look?
#include "answers.hpp"
#include "bankwright/analyses/operating_point.hpp"
#include "bankwright/config/write.hpp"
#include "bankwright/drawing/svg.hpp"
#include "bankwright/page/to_html.hpp"
#include "bankwright/reports/findings_json.hpp"
#include "bankwright/reports/moment_words.hpp"
#include "bankwright/reports/rule_reference.hpp"
#include "bankwright/rules/catalog.hpp"

namespace bankwright::python {

std::string check_answer(ReadBank const& read, CheckOptions const& rules) {
    if (rules.only.empty() && rules.skip.empty()) return findings_json({read.seen});
    return findings_json({read.inspect_for(rules)});
}

std::string drawing_answer(ReadBank const& read, MomentWords const& words, bool readings, bool findings,
                           std::string const& prefix) {
    auto const& bank = read.whole();
    auto const moment = moment_of(words);
    drawing::DrawOptions options;
    options.prefix = prefix;
    options.arrangement = read.seen.arrangement;
    if (readings) {
        options.point = operating_point(bank, {.moment = moment});
        options.moment = in_words(moment);
    }
    if (findings) options.findings = read.seen.findings;
    return drawing::to_svg(bank, options);
}

std::string report_answer(ReadBank const& read, MomentWords const& words) {
    auto const moment = moment_of(words);
    return page::to_html(page::report_on(read.whole(), read.seen, all_rules(), {moment, in_words(moment), {}}));
}

std::string written_answer(ReadBank const& read) { return write(read.whole()); }

std::string rules_answer() { return rules_json(all_rules()); }

} // namespace bankwright::python
