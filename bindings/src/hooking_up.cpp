// In which order is it put together, and what does the meter read?
#include "answers.hpp"
#include "bankwright/analyses/hookup.hpp"
#include "bankwright/reports/hookup_json.hpp"

#include <algorithm>
#include <stdexcept>

namespace bankwright::python {

std::string hookup_answer(ReadBank const& read, MeterWords const& words) {
    HookedUp hooked{head_of(read.seen), read.whole(), {}, {}, {}};
    if (words.of_reading) hooked.options.of_reading = *words.of_reading;
    if (words.digits) hooked.options.digits = *words.digits;
    if (words.resolution) hooked.options.resolution = *words.resolution * si::volt;
    if (words.charge_within) hooked.options.charge_within = StateOfCharge::of(*words.charge_within);
    refuse_unfit(hooked.options);
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
