// In which order is it put together, and what does the meter read?
#include "answers.hpp"
#include "bankwright/analyses/hookup.hpp"
#include "bankwright/analyses/hookup_judge.hpp"
#include "bankwright/config/read_log.hpp"
#include "bankwright/config/write_log.hpp"
#include "bankwright/reports/findings_json.hpp"
#include "bankwright/reports/hookup_json.hpp"
#include "bankwright/reports/log_json.hpp"
#include "bankwright/reports/log_text.hpp"

#include <algorithm>
#include <stdexcept>
#include <utility>

namespace bankwright::python {

namespace {

HookupOptions options_of(MeterWords const& words) {
    HookupOptions options;
    if (words.of_reading) options.of_reading = *words.of_reading;
    if (words.digits) options.digits = *words.digits;
    if (words.resolution) options.resolution = *words.resolution * si::volt;
    if (words.charge_within) options.charge_within = StateOfCharge::of(*words.charge_within);
    refuse_unfit(options);
    return options;
}

} // namespace

LogAnswer judged_answer(ReadBank const& read, MeterWords const& words, std::string const& log,
                        std::string const& file) {
    auto const& bank = read.whole();
    auto const options = options_of(words);
    auto const& findings = read.seen.findings;
    auto const worst = std::find_if(findings.begin(), findings.end(), stops_hookup);
    if (worst != findings.end()) throw std::invalid_argument("no hook-up: " + worst->message);
    if (auto const unfit = unfit_for_hookup(bank)) throw std::invalid_argument("no hook-up: " + *unfit);
    auto kept = read_log(log, bank);
    if (!kept.findings.empty()) // an answer left out would be another log
        throw Refused{findings_json({{.file = file, .text = log, .findings = std::move(kept.findings)}})};
    LoggedHookup logged{
        head_of(read.seen), bank, hookup_options(kept.log, options), file, std::move(kept.log), {}, {}, {}, {}};
    HookupJudge const judge(bank, logged.options);
    logged.sheet = judge.sheet();
    logged.questions = judge.questions();
    logged.changed = changed_since(logged.log.marks, bank);
    logged.judged = judge.judge(logged.log.entries);
    return {log_json(logged), log_text(logged)};
}

std::string hookup_answer(ReadBank const& read, MeterWords const& words) {
    HookedUp hooked{head_of(read.seen), read.whole(), options_of(words), {}, {}};
    // Nobody is told how to put together what must not be put together.
    auto const& findings = read.seen.findings;
    auto const worst = std::find_if(findings.begin(), findings.end(), stops_hookup);
    if (worst != findings.end()) {
        hooked.findings.push_back(*worst);
        return hookup_json(hooked);
    }
    if (auto const unfit = unfit_for_hookup(hooked.bank)) throw std::invalid_argument("no hook-up: " + *unfit);
    hooked.result = hookup(hooked.bank, hooked.options);
    hooked.findings = said_with_hookup(findings);
    return hookup_json(hooked);
}

} // namespace bankwright::python
