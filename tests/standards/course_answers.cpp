#include "standards/course_answers.hpp"

#include "bankwright/analyses/discharge.hpp"
#include "bankwright/analyses/recharge.hpp"
#include "bankwright/analyses/short_circuit.hpp"
#include "bankwright/devices/battery_acceptance.hpp"
#include "bankwright/devices/battery_recovery.hpp"

#include <algorithm>
#include <functional>

namespace standards {
namespace {

using namespace bankwright;
using Answers = std::map<std::string, std::function<double(Case const&)>>;

constexpr double ampere_hour = 3600.0; // [C]
constexpr double hour = 3600.0;        // [s]

Battery battery_of(Case const& c) {
    Battery battery;
    battery.id = "A";
    battery.voltage = c.number("volts", 12.0) * si::volt;
    battery.chemistry = chemistry_named(c.words.count("chemistry") ? c.word("chemistry") : "flooded");
    battery.capacity = c.number("capacity") * ampere_hour * si::coulomb;
    if (c.numbers.count("rated_hours")) battery.capacity_hours = c.number("rated_hours") * hour * si::second;
    if (c.numbers.count("reserve")) battery.reserve = c.number("reserve") * 60.0 * si::second;
    if (c.numbers.count("charge")) battery.charge = StateOfCharge::percent(c.number("charge"));
    return battery;
}

Run lead(char const* id, char const* from, char const* to) {
    Run run;
    run.conductor.id = id;
    run.conductor.resistance = Resistance{};
    run.from = from;
    run.to = to;
    return run;
}

Bank bank_of(Case const& c) {
    Bank bank;
    bank.batteries = {battery_of(c)};
    bank.system.ambient = fahrenheit(c.number("fahrenheit", 77.0));
    return bank;
}

DischargeResult run_down(Case const& c) {
    auto bank = bank_of(c);
    Load load;
    load.id = "lamp";
    load.current = c.number("current") * si::ampere;
    bank.loads = {load};
    bank.cables = {lead("plus", "A+", "lamp+"), lead("minus", "lamp-", "A-")};
    return discharge(bank);
}

// As long as the charge takes; `longest` [s] ends it before.
RechargeResult fill(Case const& c, double longest) {
    auto bank = bank_of(c);
    Charger charger;
    charger.id = "ch";
    charger.voltage = c.number("holds") * si::volt;
    charger.current = c.number("gives") * si::ampere;
    bank.chargers = {charger};
    bank.cables = {lead("plus", "ch.1+", "A+"), lead("minus", "ch.1-", "A-")};
    RechargeOptions options;
    options.longest = longest * si::second;
    return recharge(bank, options);
}
constexpr double long_enough = 100.0 * hour;

Answers const answers{
    {"run_hours", [](Case const& c) { return run_down(c).runtime.value() / hour; }},
    {"volts_at_the_end", [](Case const& c) { return run_down(c).samples.back().voltage[0].value(); }},
    // Ah at one current until no more comes, and after a long rest at another
    {"ampere_hours_in_two_runs",
     [](Case const& c) {
         auto battery = battery_of(c);
         auto const at = celsius(25);
         auto const first = c.number("current") * time_to_empty(battery, c.number("current") * si::ampere, at).value();
         battery.charge = StateOfCharge::of(1.0 - first / battery.capacity->value());
         auto const then = c.number("then") * time_to_empty(battery, c.number("then") * si::ampere, at).value();
         return (first + then) / ampere_hour;
     }},
    {"charge_hours", [](Case const& c) { return fill(c, long_enough).duration.value() / hour; }},
    {"full_at_the_end", [](Case const& c) { return fill(c, long_enough).end == RechargeEnd::full ? 1.0 : 0.0; }},
    // of what was missing
    {"put_back_over_taken",
     [](Case const& c) {
         auto const missing = (1.0 - c.number("charge") / 100.0) * c.number("capacity");
         return fill(c, long_enough).outputs[0].given.value() / ampere_hour / missing;
     }},
    {"hours_to_restore",
     [](Case const& c) {
         auto const run = fill(c, long_enough);
         auto const start = c.number("charge") / 100.0;
         auto const wanted = start + c.number("share") * (1.0 - start);
         auto const there = std::find_if(run.samples.begin(), run.samples.end(), [&](BatterySample const& sample) {
             return sample.charge[0].value() >= wanted;
         });
         return there->time.value() / hour;
     }},
    {"short_circuit_kiloamperes",
     [](Case const& c) {
         auto bank = bank_of(c);
         bank.batteries[0].cells = static_cast<int>(c.number("cells", 6.0));
         Busbar bar;
        bar.id = "bar";
        bank.busbars = {bar};
         bank.cables = {lead("plus", "A+", "bar")};
         double most = 0.0;
         for (auto const& place : short_circuit(bank).places)
             most = std::max(most, place.prospective.value());
         return most / 1000.0;
     }},
};

} // namespace

bool asks_for_a_course(Case const& c) { return answers.count(c.quantity) > 0; }
double course_answer(Case const& c) { return answers.at(c.quantity)(c); }

} // namespace standards
