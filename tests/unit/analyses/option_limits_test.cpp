// What the command refuses the library refuses: every option of every analysis, on both sides of its range.
#include "bankwright/analyses/discharge.hpp"
#include "bankwright/analyses/hookup.hpp"
#include "bankwright/analyses/operating_point.hpp"
#include "bankwright/analyses/recharge.hpp"
#include "bankwright/analyses/seen_from.hpp"
#include "bankwright/analyses/short_circuit.hpp"
#include "bankwright/analyses/tolerance.hpp"
#include "bankwright/analyses/trace.hpp"
#include "bankwright/network/option_limits.hpp"
#include "bankwright/rules/rule_shares.hpp"
#include "bankwright/sizing/sizing.hpp"
#include "support/jon_boat.hpp"

#include <cmath>
#include <limits>
#include <stdexcept>

#include <doctest/doctest.h>

using namespace bankwright;

namespace {

constexpr double none = std::numeric_limits<double>::quiet_NaN();
constexpr double endless = std::numeric_limits<double>::infinity();

Bank boat() {
    auto bank = support::jon_boat();
    for (auto& battery : bank.batteries) {
        battery.chemistry = Chemistry::agm;
        battery.capacity = Charge(100.0 * 3600.0 * si::coulomb);
        battery.emf = std::nullopt;
    }
    Charger charger;
    charger.id = "ch";
    charger.voltage = 43.2 * si::volt;
    charger.current = 10.0 * si::ampere;
    bank.chargers = {charger};
    return bank;
}

Moment at_throttle(double throttle) {
    Moment moment;
    moment.throttle = Throttle::of(throttle);
    return moment;
}

Moment at_current(double amperes) {
    Moment moment;
    moment.loads = LoadsAre::constant_current;
    moment.current = amperes * si::ampere;
    return moment;
}

template <class Options, class Set>
Options with(Set set) {
    Options options;
    set(options);
    return options;
}

} // namespace

TEST_CASE("a moment out of its range is refused by every analysis that takes one") {
    auto const bank = boat();
    for (auto const& moment : {at_throttle(1.5), at_throttle(-0.2), at_throttle(none), at_current(-40.0),
                               at_current(none), at_current(endless), at_current(2e6)}) {
        CHECK_THROWS_AS(operating_point(bank, {.moment = moment}), std::invalid_argument);
        CHECK_THROWS_AS(discharge(bank, with<DischargeOptions>([&](auto& o) { o.moment = moment; })),
                        std::invalid_argument);
        CHECK_THROWS_AS(tolerance(bank, with<ToleranceOptions>([&](auto& o) { o.moment = moment; })),
                        std::invalid_argument);
        CHECK_THROWS_AS(seen_from(bank, "A+", "A-", with<SeenFromOptions>([&](auto& o) { o.moment = moment; })),
                        std::invalid_argument);
        TakenReading reading;
        reading.what = VoltsRead{"A+", "A-", 12.6 * si::volt};
        reading.moment = moment;
        CHECK_THROWS_AS(trace(bank, {reading}), std::invalid_argument);
    }
    for (auto const& moment : {at_throttle(0.0), at_throttle(1.0), at_current(0.0), at_current(1e6)})
        CHECK_NOTHROW(operating_point(bank, {.moment = moment}));
    CHECK_THROWS_WITH(operating_point(bank, {.moment = at_throttle(1.5)}),
                      "throttle: `150 %` is out of range; a throttle is 0 % to 100 %");
    CHECK_THROWS_WITH(operating_point(bank, {.moment = at_current(-40.0)}),
                      "current: `-40 A` is negative; a load draws 0 A or more");
}

TEST_CASE("a run through time is refused what it cannot be asked") {
    auto const bank = boat();
    auto const refused = [&](auto set) {
        CHECK_THROWS_AS(discharge(bank, with<DischargeOptions>(set)), std::invalid_argument);
    };
    for (double const seconds : {-1.0, none, endless}) {
        refused([&](auto& o) { o.longest = seconds * si::second; });
        refused([&](auto& o) { o.rest = seconds * si::second; });
        refused([&](auto& o) { o.every = seconds * si::second; });
        refused([&](auto& o) { o.duty.legs = {{Throttle::of(0.5), seconds * si::second}}; });
        CHECK_THROWS_AS(recharge(bank, with<RechargeOptions>([&](auto& o) { o.longest = seconds * si::second; })),
                        std::invalid_argument);
    }
    refused([&](auto& o) { o.longest = 0.0 * si::second; });
    for (double const share : {-0.01, 1.01, 5.0, none}) {
        refused([&](auto& o) { o.duty.legs = {{Throttle::of(share), 60.0 * si::second}}; });
        CHECK_THROWS_AS(recharge(bank, with<RechargeOptions>([&](auto& o) { o.charge = StateOfCharge::of(share); })),
                        std::invalid_argument);
    }
    for (double const step : {0.0, -1e-9, none, 1.0})
        refused([&](auto& o) { o.tolerance = step; });
    refused([&](auto& o) { o.samples_apart = 0.0; });
    refused([&](auto& o) { o.samples_apart = none; });
}

TEST_CASE("a meter, a spread, a number of draws and a reading have ranges") {
    auto const bank = support::jon_boat();
    auto const no_hookup = [&](auto set) {
        CHECK_THROWS_AS(hookup(bank, with<HookupOptions>(set)), std::invalid_argument);
    };
    for (double const share : {-0.5, 0.11, none})
        no_hookup([&](auto& o) { o.of_reading = share; });
    for (int const digits : {-1, 101})
        no_hookup([&](auto& o) { o.digits = digits; });
    for (double const volts : {0.0, -0.01, 10.1, none})
        no_hookup([&](auto& o) { o.resolution = volts * si::volt; });
    for (double const share : {-0.01, 1.01, none})
        no_hookup([&](auto& o) { o.charge_within = StateOfCharge::of(share); });
    CHECK_NOTHROW(hookup(bank));

    auto const no_study = [&](auto set) {
        CHECK_THROWS_AS(tolerance(bank, with<ToleranceOptions>(set)), std::invalid_argument);
    };
    for (double const share : {-0.1, 0.91, none}) {
        no_study([&](auto& o) { o.spreads.resistance = Spread::of(share); });
        no_study([&](auto& o) { o.spreads.contact = Spread::of(share); });
        Spreads spreads;
        spreads.charge = Spread::of(share);
        CHECK_THROWS_AS(sample_bank(bank, spreads, 1, 1), std::invalid_argument);
        CHECK_THROWS_AS(rule_shares(bank, with<RuleShareOptions>([&](auto& o) { o.spreads = spreads; })),
                        std::invalid_argument);
    }
    no_study([&](auto& o) { o.samples = 0; });
    no_study([&](auto& o) { o.samples = 2'000'000'000; });
    no_study([&](auto& o) { o.threads = 0; });

    for (double const volts : {none, endless, 1001.0, -1001.0}) {
        TakenReading reading;
        reading.what = VoltsRead{"A+", "A-", volts * si::volt};
        CHECK_THROWS_AS(trace(bank, {reading}), std::invalid_argument);
        reading.what = AmpsRead{"J1", volts * 1e6 * si::ampere};
        CHECK_THROWS_AS(trace(bank, {reading}), std::invalid_argument);
    }
    for (double const share : {-0.1, none, 0.2}) {
        CHECK_THROWS_AS(trace(bank, {}, with<TraceOptions>([&](auto& o) { o.meter.of_reading = share; })),
                        std::invalid_argument);
        CHECK_THROWS_AS(trace(bank, {}, with<TraceOptions>([&](auto& o) { o.clamp.of_reading = share; })),
                        std::invalid_argument);
    }
    CHECK_THROWS_AS(short_circuit(bank, with<ShortCircuitOptions>([](auto& o) { o.least_voltage = none * si::volt; })),
                    std::invalid_argument);
    CHECK_THROWS_AS(sizing(bank, with<SizingOptions>([](auto& o) { o.runtime = none * si::second; })),
                    std::invalid_argument);
    CHECK_THROWS_AS(sizing(bank, with<SizingOptions>([](auto& o) { o.ambient = celsius(500.0); })),
                    std::invalid_argument);
}

TEST_CASE("a charge or throttle of a part that a program made up is refused") {
    auto bank = boat();
    bank.batteries[1].charge = StateOfCharge::of(5.0);
    CHECK_THROWS_WITH_AS(operating_point(bank), "B.charge: `500 %` is out of range; a charge is 0 % to 100 %",
                         std::invalid_argument);
    CHECK_THROWS_AS(discharge(bank), std::invalid_argument);
    bank.batteries[1].charge = StateOfCharge::of(1.0);
    bank.motors.front().throttle = Throttle::of(-0.1);
    CHECK_THROWS_WITH_AS(operating_point(bank), "troll.throttle: `-10 %` is out of range; a throttle is 0 % to 100 %",
                         std::invalid_argument);
}

TEST_CASE("a part of a bank that was not solved has no reading, and that is why") {
    auto bank = support::jon_boat();
    bank.batteries.front().emf = endless * si::volt;
    auto const point = operating_point(bank);
    CHECK(point.status == solver::Status::bad_circuit);
    CHECK_THROWS_WITH_AS(reading_of(point, "A"), "no reading of `A`: the bank is not solved (bad-circuit)",
                         std::out_of_range);
}
