#include "bankwright/analyses/discharge.hpp"
#include "bankwright/units/literals.hpp"

#include <doctest/doctest.h>

#include <cmath>

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

// The two ratings of a label are two points that the run must pass through: 20 h at a twentieth of the capacity, and
// the reserve minutes at 25 A (SAE J537, definition read). The event is pinned to a millisecond.
TEST_CASE("a battery lasts its 20 hours at the 20-hour current and its reserve minutes at 25 A") {
    auto const slow = discharge(one_battery(5_A));
    CHECK(slow.end == RunEnd::battery_empty);
    CHECK(slow.ended_by == "A");
    CHECK(hours(slow) == doctest::Approx(20.0).epsilon(1e-6));
    CHECK(hours(discharge(one_battery(25_A))) == doctest::Approx(3.0).epsilon(1e-6));
}

// Peukert's law in its rated form, t = R (C / (I R))^n with n = ln(20/3) / ln(25/5) from the same two ratings.
TEST_CASE("between the ratings a run follows Peukert's law") {
    auto const n = std::log(20.0 / 3.0) / std::log(5.0);
    for (double amperes : {8.0, 15.0, 40.0}) {
        CAPTURE(amperes);
        CHECK(hours(discharge(one_battery(amperes * si::ampere))) ==
              doctest::Approx(20.0 * std::pow(5.0 / amperes, n)).epsilon(1e-6));
    }
}

TEST_CASE("charge in equals charge out: the samples' currents integrate to what the charge says") {
    auto bank = one_battery(5_A); // at the 20-hour current the law costs nothing extra
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

TEST_CASE("a run without a load says so, and a bank without capacity is a caller's mistake") {
    auto bank = one_battery(5_A);
    bank.loads.clear();
    bank.cables.clear();
    CHECK(discharge(bank).end == RunEnd::nothing_drawn);
    bank.batteries[0].capacity.reset();
    CHECK_THROWS_AS(discharge(bank), std::invalid_argument);
    CHECK(missing_for_discharge(bank) == "battery `A` needs `capacity`");
}
