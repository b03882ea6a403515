#include "bankwright/analyses/discharge.hpp"
#include "bankwright/analyses/run_range.hpp"
#include "bankwright/devices/battery_capacity.hpp"
#include "bankwright/units/literals.hpp"

#include <cmath>

#include <doctest/doctest.h>

using namespace bankwright;
using namespace bankwright::literals;

namespace {

Run wire(char const* id, char const* from, char const* to, double milliohms = 1.0) {
    Run run;
    run.conductor.id = id;
    run.conductor.resistance = milliohms * 1e-3 * si::ohm;
    run.from = from;
    run.to = to;
    return run;
}

Battery agm(char const* id) {
    Battery b;
    b.id = id;
    b.chemistry = Chemistry::agm;
    b.voltage = 12_V;
    b.capacity = 100_Ah;
    b.reserve = 180_min;
    b.resistance = 4_mohm;
    return b;
}

Bank one_battery(Current drawn) {
    Bank bank;
    bank.batteries = {agm("A")};
    bank.cables = {wire("p", "A+", "lamp+"), wire("n", "lamp-", "A-")};
    Load lamp;
    lamp.id = "lamp";
    lamp.current = drawn;
    bank.loads = {lamp};
    return bank;
}

double hours(DischargeResult const& run) { return run.runtime.value() / 3600.0; }

} // namespace

// A current that does not change takes the same from the charge in every minute, so that the charge at round times is
// known without the run.
TEST_CASE("the times that are asked for are among the samples, and the run is the same") {
    Bank const bank = one_battery(20_A);
    DischargeOptions options;
    DischargeResult const free = discharge(bank, options);
    options.every = 10_min;
    DischargeResult const run = discharge(bank, options);
    CHECK(run.runtime.value() == doctest::Approx(free.runtime.value()).epsilon(1e-6));
    int multiples = 0;
    for (BatterySample const& sample : run.samples)
        if (double const tens = sample.time.value() / 600.0; tens == std::round(tens)) {
            CHECK(sample.charge[0].value() == doctest::Approx(1.0 - 20.0 * sample.time.value() / 360e3).epsilon(1e-9));
            ++multiples;
        }
    CHECK(multiples == 1 + static_cast<int>(run.runtime.value() / 600.0));
}

// The two ratings of a label are two points that the run must pass through: 20 h at a twentieth of the capacity, and
// the reserve minutes at 25 A and 80 degF, both to 1.75 V a cell (SAE J537, definition read). What is at hand lasts
// just so long; the drop in the battery's own resistance ends it so much sooner as the last volt falls in (some tenths
// of a percent).
TEST_CASE("a battery is down to 10.5 V after 20 hours at the 20-hour current, and after its reserve minutes at 25 A") {
    auto const slow = discharge(one_battery(5_A));
    CHECK(slow.end == RunEnd::battery_empty);
    CHECK(slow.ended_by == "A");
    CHECK(hours(slow) == doctest::Approx(20.0).epsilon(2e-3));
    CHECK(slow.samples.back().voltage[0].value() == doctest::Approx(10.5).epsilon(1e-4));
    auto warm = one_battery(25_A);
    warm.system.ambient = celsius((80.0 - 32.0) / 1.8);
    auto const reserve = discharge(warm);
    CHECK(hours(reserve) == doctest::Approx(3.0).epsilon(5e-3));
    CHECK(reserve.samples.back().voltage[0].value() == doctest::Approx(10.5).epsilon(1e-4));
}

// Peukert's law in its rated form, t = R (C / (I R))^n, to the end of what is at hand.
TEST_CASE("at a constant current a run from full lasts by Peukert's law") {
    for (double amperes : {8.0, 15.0, 25.0, 40.0}) {
        CAPTURE(amperes);
        auto bank = one_battery(amperes * si::ampere);
        auto const by_law = 20.0 * std::pow(5.0 / amperes, peukert_exponent(bank.batteries[0]));
        CHECK(hours(discharge(bank)) == doctest::Approx(by_law).epsilon(0.01)); // its resistance ends it sooner
        bank.batteries[0].low_cutoff = 1_V;
        CHECK(hours(discharge(bank)) == doctest::Approx(by_law).epsilon(1e-6));
    }
}

// Doerffel and Sharkh, J. Power Sources 155 (2006) 395 [finding recalled]: what a high current leaves is not lost.
TEST_CASE("after a fast discharge a slow one goes on, and takes in all what a slow one alone would have") {
    DischargeOptions fast_then_slow;
    auto bank = one_battery(40_A);
    bank.batteries[0].chemistry = Chemistry::flooded;
    bank.batteries[0].reserve.reset();
    auto const fast = discharge(bank);
    auto const given = fast.given[0].value() / 3600.0; // [Ah]
    CHECK(given < 75.0);
    CHECK(fast.samples.back().charge[0].value() == doctest::Approx(1.0 - given / 100.0).epsilon(1e-9));
    auto rested = bank;
    rested.loads[0].current = 5_A;
    rested.batteries[0].charge = fast.samples.back().charge[0];
    auto const slow = discharge(rested);
    CHECK(given + slow.given[0].value() / 3600.0 == doctest::Approx(100.0).epsilon(0.01));
}

TEST_CASE("charge in equals charge out: the samples' currents integrate to what the charge says") {
    auto bank = one_battery(5_A);
    bank.batteries[0].charge = StateOfCharge::of(0.9);
    DischargeOptions options;
    options.longest = 3600.0 * 4.0 * si::second;
    auto const run = discharge(bank, options);
    CHECK(run.end == RunEnd::time);
    CHECK(run.samples.back().charge[0].value() == doctest::Approx(0.9 - 4.0 * 5.0 / 100.0).epsilon(1e-9));
}

TEST_CASE("the answer does not depend on the tolerance beyond what the tolerance allows") {
    auto bank = one_battery(5_A);
    bank.loads[0].current.reset();
    bank.loads[0].power = 300.0 * si::watt;
    DischargeOptions fine;
    fine.tolerance = 1e-9;
    DischargeOptions coarse;
    coarse.tolerance = 1e-4;
    CHECK(hours(discharge(bank, coarse)) == doctest::Approx(hours(discharge(bank, fine))).epsilon(1e-3));
}

TEST_CASE("when one lithium string drops out the other goes on alone, and ends the run") {
    Bank bank;
    for (auto const* id : {"A", "B"}) {
        Battery b;
        b.id = id;
        b.chemistry = Chemistry::lifepo4;
        b.voltage = 12.8_V;
        b.capacity = 100_Ah;
        b.resistance = 5_mohm;
        bank.batteries.push_back(b);
    }
    bank.batteries[1].health = Health::of(0.6);
    bank.jumpers = {wire("P", "A+", "B+"), wire("N", "A-", "B-")};
    bank.cables = {wire("p", "A+", "lamp+"), wire("n", "lamp-", "B-")};
    Load lamp;
    lamp.id = "lamp";
    lamp.current = 40_A;
    bank.loads = {lamp};
    auto const run = discharge(bank);
    REQUIRE(run.dropped_out.size() == 2);
    CHECK(run.dropped_out[0].battery == "B");
    CHECK(run.dropped_out[1].battery == "A");
    CHECK(run.ended_by == "A");
    // Lithium capacity hardly depends on the current: 160 Ah at 40 A are 4 h, less what the rate costs.
    CHECK(hours(run) > 3.5);
    CHECK(hours(run) < 4.0);
    auto const& last = run.samples.back();
    CHECK(last.current[1].value() == 0.0);
}

TEST_CASE("a weak lithium cell opens the disconnect before it can be turned, a weak lead cell is driven on") {
    for (auto const chemistry : {Chemistry::lifepo4, Chemistry::agm}) {
        auto bank = one_battery(20_A);
        auto& battery = bank.batteries[0];
        battery.chemistry = chemistry;
        battery.reserve.reset();
        battery.low_cutoff = 5_V; // so low that it is the cell that decides
        battery.weak_cells = 1;
        battery.weak_capacity = Health::percent(70);
        auto const run = discharge(bank);
        auto const left = run.samples.back().charge[0].value();
        if (is_lithium(chemistry)) {
            CHECK(run.end == RunEnd::battery_cutoff);
            CHECK(run.reversed_cells.empty());
            CHECK(left ==
                  doctest::Approx(0.3).epsilon(0.03)); // the weak cell's 70 % are out, but for its last hundredth
        } else {
            CHECK(run.end == RunEnd::battery_empty);
            REQUIRE(run.reversed_cells.size() == 1);
            CHECK(run.reversed_cells[0].battery == "A");
            CHECK(run.reversed_cells[0].deepest.value() <= -20.0 * 0.004 / 6.0); // its even share of 4 mohm, by hand
            // What is at hand is spent; Peukert's law leaves 1 - (I / I20)^(1 - n) for a slower discharge.
            CHECK(left == doctest::Approx(1.0 - std::pow(20.0 / 5.0, 1.0 - 1.1)).epsilon(1e-4));
        }
    }
}

TEST_CASE("a run without a load says so, and a bank without capacity is a caller's mistake") {
    auto bank = one_battery(5_A);
    bank.loads.clear();
    bank.cables.clear();
    CHECK(discharge(bank).end == RunEnd::nothing_drawn);
    bank.batteries[0].capacity.reset();
    CHECK_THROWS_AS(discharge(bank), std::invalid_argument);
    CHECK(missing_for_discharge(bank) == "battery `A` needs `capacity`");
}

namespace {

Bank one_motor() {
    auto bank = one_battery(5_A);
    bank.loads.clear();
    Motor motor;
    motor.id = "lamp"; // where the wires go
    motor.voltage = 12_V;
    motor.current = 40_A;
    bank.motors = {motor};
    return bank;
}

DutyLeg leg(double throttle, Duration duration) { return {Throttle::of(throttle), duration}; }

} // namespace

TEST_CASE("a trip of legs that all say the same is a run at that throttle") {
    DischargeOptions straight;
    straight.moment.throttle = Throttle::of(0.7);
    DischargeOptions in_legs;
    in_legs.duty = {{leg(0.7, 7_min), leg(0.7, 11_min)}, true};
    auto const one = discharge(one_motor(), straight);
    auto const other = discharge(one_motor(), in_legs);
    CHECK(other.end == RunEnd::battery_empty);
    CHECK(other.runtime.value() == doctest::Approx(one.runtime.value()).epsilon(1e-6));
    auto const minutes = one.runtime.value() / 60.0;
    auto const rounds = std::floor(minutes / 18.0);
    CHECK(other.legs_done == static_cast<std::size_t>(2.0 * rounds) + (minutes - 18.0 * rounds >= 7.0 ? 1 : 0));
}

TEST_CASE("time at anchor costs time and no charge, and the voltage recovers") {
    DischargeOptions there_and_back;
    there_and_back.duty.legs = {leg(1.0, 30_min), leg(0.0, 2_h), leg(1.0, 30_min)};
    DischargeOptions without;
    without.duty.legs = {leg(1.0, 60_min)};
    auto const rested = discharge(one_motor(), there_and_back);
    auto const straight = discharge(one_motor(), without);
    CHECK(rested.end == RunEnd::time);
    CHECK(rested.legs_done == 3);
    CHECK(hours(rested) == doctest::Approx(3.0));
    for (auto const* run : {&rested, &straight})
        CHECK(run->samples.back().charge[0].value() ==
              doctest::Approx(1.0 - run->given[0].value() / 360e3).epsilon(1e-9));
    CHECK(rested.samples.back().voltage[0] > straight.samples.back().voltage[0]);
    CHECK(rested.given[0] > straight.given[0]); // the motor takes more of the higher voltage
    CHECK(rested.given[0].value() == doctest::Approx(straight.given[0].value()).epsilon(0.03));
}

TEST_CASE("a trip at anchor draws nothing, and a leg of no time is a caller's mistake") {
    DischargeOptions options;
    options.duty.legs = {leg(0.0, 1_h)};
    options.duty.repeat = true;
    CHECK(discharge(one_motor(), options).end == RunEnd::nothing_drawn);
    options.duty.legs.push_back(leg(0.5, 0_min));
    CHECK_THROWS_AS(discharge(one_motor(), options), std::invalid_argument);
}

// Charge is conserved but for what charging loses: with 95 % coulombic efficiency the one gains 0.95 of what the other
// gives, until both show the same voltage, which for two of a kind means the same charge.
TEST_CASE("at rest afterwards the fuller of two in parallel charges the other until they are alike") {
    auto bank = one_battery(10_A);
    bank.batteries.push_back(agm("B"));
    bank.batteries[1].charge = StateOfCharge::of(0.8);
    bank.jumpers = {wire("P", "A+", "B+", 0.5), wire("N", "A-", "B-", 0.5)};
    DischargeOptions options;
    options.longest = 600.0 * si::second;
    options.rest = 100.0 * 3600.0 * si::second;
    auto const run = discharge(bank, options);
    auto const& before = run.rest.front();
    auto const& after = run.rest.back();
    CHECK((after.time - before.time).value() == doctest::Approx(options.rest.value()));
    CHECK(before.current[0] > 1_A);
    CHECK(before.current[0].value() == doctest::Approx(-before.current[1].value()).epsilon(1e-9));
    CHECK(after.charge[0].value() == doctest::Approx(after.charge[1].value()).epsilon(1e-3));
    auto const given = before.charge[0].value() - after.charge[0].value();
    auto const gained = after.charge[1].value() - before.charge[1].value();
    CHECK(gained == doctest::Approx(0.95 * given).epsilon(1e-6));
}

TEST_CASE("energy and charge balance over a run") {
    auto bank = one_motor();
    bank.batteries.push_back(agm("B"));
    bank.batteries[1].health = Health::of(0.8);
    bank.jumpers = {wire("P", "A+", "B+", 2.0), wire("N", "A-", "B-", 3.0)};
    auto const run = discharge(bank);
    auto const& e = run.energy;
    CHECK(e.given.value() == doctest::Approx((e.battery_heat + e.wiring_heat + e.used).value()).epsilon(1e-9));
    CHECK(e.wiring_heat.value() > 0.0);
    CHECK(e.charged.value() == 0.0);
}

// Two batteries in a ring of copper: 2 x 12.8 V over some 10 milliohm, until one of them is empty.
TEST_CASE("a ring of batteries at rest runs down, and no longer than there is charge") {
    Bank bank;
    bank.batteries = {agm("A"), agm("B")};
    bank.batteries[1].charge = StateOfCharge::of(0.9);
    bank.jumpers = {wire("up", "A+", "B-"), wire("wrong", "B+", "A-")};
    DischargeOptions options;
    options.rest = 10_h;
    auto const run = discharge(bank, options);
    CHECK(run.end == RunEnd::nothing_drawn);
    CHECK(run.rest_ended_by == "B");
    REQUIRE(run.rest.size() > 10);
    CHECK(run.rest.size() < 5000);
    CHECK(run.rest.front().current[0].value() == doctest::Approx(25.6 / 0.010).epsilon(0.02));
    CHECK(run.rest.back().charge[1] < run.rest.back().charge[0]);
    // Spent at such a current while a slower one would still find charge.
    CHECK(run.rest.back().charge[1].value() > 0.3);
    CHECK((run.rest.back().time - run.runtime) < 10_min);
    CHECK(run.rest.back().charge[0].value() > 0.05);
    options.rest = 1_s;
    CHECK(discharge(bank, options).rest_ended_by.empty());
}

// So small a battery settles in a fraction of a millisecond, and an explicit rule would take some ten million steps.
TEST_CASE("a battery a million times smaller beside another takes no longer to answer, and energy balances") {
    for (auto const chemistry : {Chemistry::agm, Chemistry::nmc}) {
        auto bank = one_battery(5_A);
        bank.batteries[0].chemistry = chemistry;
        bank.batteries[0].reserve.reset();
        bank.batteries[0].charge = StateOfCharge::of(0.9);
        if (chemistry == Chemistry::nmc) bank.batteries[0].voltage = 14.8_V;
        auto alone = discharge(bank);
        bank.batteries.push_back(bank.batteries[0]);
        bank.batteries[1].id = "B";
        bank.batteries[1].capacity = *bank.batteries[0].capacity * 1e-6;
        bank.jumpers = {wire("P", "A+", "B+"), wire("N", "A-", "B-")};
        auto const run = discharge(bank);
        // Where its voltage falls fast the small one is asked for more than its rated current, and is empty a little
        // before.
        CHECK(run.runtime.value() == doctest::Approx(alone.runtime.value()).epsilon(0.02));
        CHECK(run.samples.size() < 100'000);
        auto const& e = run.energy;
        CHECK(e.given.value() == doctest::Approx((e.battery_heat + e.wiring_heat + e.used).value()).epsilon(1e-9));
    }
}

// At a current that does not change the moment is known without the run: half of 100 Ah at 10 A are 5 h.
TEST_CASE("the moment of the reserve is told, and the run goes on") {
    auto bank = one_battery(10_A);
    auto const run = discharge(bank);
    REQUIRE(run.to_reserve);
    CHECK(run.to_reserve->value() == doctest::Approx(5.0 * 3600.0).epsilon(1e-6));
    CHECK(run.runtime > *run.to_reserve);
    bank.system.reserve = StateOfCharge::of(0.8);
    CHECK(discharge(bank).to_reserve->value() == doctest::Approx(2.0 * 3600.0).epsilon(1e-6));
    DischargeOptions asked;
    asked.reserve = StateOfCharge::of(0.0);
    CHECK_FALSE(discharge(bank, asked).to_reserve); // at 10 A it is empty before
    bank.batteries[0].chemistry = Chemistry::lifepo4;
    bank.batteries[0].voltage = 12.8_V;
    bank.system.reserve.reset();
    CHECK(discharge(bank).to_reserve->value() == doctest::Approx(8.0 * 3600.0).epsilon(1e-6));
}

TEST_CASE("what a file leaves open makes a run shorter or longer, and less of it the less it leaves open") {
    auto bank = one_battery(25_A);
    bank.batteries[0].reserve.reset();
    bank.batteries[0].resistance.reset();
    auto const open = run_range(bank, {});
    auto const best = discharge(bank).runtime;
    CHECK(open.runtime.low < best);
    CHECK(open.runtime.high > best);
    REQUIRE(open.to_reserve);
    CHECK(open.to_reserve->low < *discharge(bank).to_reserve);
    bank = one_battery(25_A);
    auto const stated = run_range(bank, {});
    CHECK(stated.runtime.high - stated.runtime.low < open.runtime.high - open.runtime.low);
}

TEST_CASE("legs of a millisecond end with the ten thousandth, and samples are kept as far as they are asked for") {
    DischargeOptions options;
    options.duty = {{leg(1.0, 0.001 * si::second), leg(0.5, 0.001 * si::second)}, true};
    auto const run = discharge(one_motor(), options);
    CHECK(run.end == RunEnd::time);
    CHECK(run.legs_done == most_legs);
    CHECK(run.runtime.value() == doctest::Approx(10.0));
    DischargeOptions ends_only;
    ends_only.keep_samples = false;
    auto const ends = discharge(one_battery(10_A), ends_only), all = discharge(one_battery(10_A));
    REQUIRE(ends.samples.size() == 2);
    CHECK(ends.samples.front().charge[0].value() == 1.0);
    CHECK(ends.samples.back().charge[0].value() == all.samples.back().charge[0].value());
    DischargeOptions often;
    often.every = 0.2 * si::second; // 170 000 in ten hours
    auto const many = discharge(one_battery(10_A), often);
    CHECK(many.samples.size() < 100'000);
    CHECK(many.samples.front().time.value() == 0.0);
    CHECK(many.samples.back().time == many.runtime);
}
