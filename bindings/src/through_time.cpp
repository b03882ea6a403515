// How long does it run, and how long does it take to fill?
#include "answers.hpp"
#include "bankwright/analyses/batteries_alike.hpp"
#include "bankwright/analyses/discharge.hpp"
#include "bankwright/analyses/recharge.hpp"
#include "bankwright/analyses/run_range.hpp"
#include "bankwright/reports/source_cautions.hpp"
#include "bankwright/reports/time_json.hpp"

#include <stdexcept>
#include <utility>

namespace bankwright::python {

namespace {

void refuse_without(std::optional<std::string> const& missing) {
    if (missing) throw std::invalid_argument(*missing);
}

void add(Course& course, std::vector<BatterySample> const& samples) {
    for (auto const& sample : samples) {
        course.seconds.push_back(sample.time.value());
        for (std::size_t battery = 0; battery < sample.charge.size(); ++battery) {
            course.charge.push_back(sample.charge[battery].value());
            course.amperes.push_back(sample.current[battery].value());
            course.volts.push_back(sample.voltage[battery].value());
        }
    }
}

} // namespace

Course discharge_answer(ReadBank const& read, DischargeWords const& words) {
    auto const& bank = read.whole();
    refuse_without(missing_for_discharge(bank));
    DischargeOptions options;
    options.moment = moment_of(words.moment);
    if (words.longest) options.longest = *words.longest * si::second;
    if (words.rest) options.rest = *words.rest * si::second;
    for (auto const& [throttle, seconds] : words.legs)
        options.duty.legs.push_back({Throttle::of(throttle), seconds * si::second});
    options.duty.repeat = words.repeat;
    Discharged discharged{
        through_time(bank, head_of(read.seen, bank, Asked::run, is_part(options.moment) || !options.duty.legs.empty())),
        discharge(bank, options),
        {}};
    options.rest = {};
    discharged.range = run_range(bank, options);
    if (auto const alike = with_batteries_alike(bank)) discharged.alike = discharge(*alike, options).runtime;
    Course course;
    add(course, discharged.run.samples);
    add(course, discharged.run.rest);
    course.document = discharge_json(discharged);
    return course;
}

Course recharge_answer(ReadBank const& read, std::optional<double> charge, std::optional<double> longest) {
    auto const& bank = read.whole();
    refuse_without(missing_for_recharge(bank));
    RechargeOptions options;
    if (charge) options.charge = StateOfCharge::of(*charge);
    if (longest) options.longest = *longest * si::second;
    Recharged const recharged{through_time(bank, head_of(read.seen, bank, Asked::charge)), recharge(bank, options),
                              sources_at_work(bank)};
    Course course;
    add(course, recharged.run.samples);
    course.document = recharge_json(recharged);
    return course;
}

} // namespace bankwright::python
