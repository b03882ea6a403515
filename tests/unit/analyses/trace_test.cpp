#include "bankwright/analyses/trace.hpp"
#include "support/jon_boat.hpp"

#include <cmath>
#include <optional>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include <doctest/doctest.h>

using namespace bankwright;
using support::jon_boat;

TEST_SUITE_BEGIN("analyses/trace");

namespace {

TakenReading volts(std::string red, std::string black, double reads) {
    TakenReading reading;
    reading.what = VoltsRead{std::move(red), std::move(black), reads * si::volt};
    return reading;
}

TakenReading under_load(TakenReading reading, double amperes) {
    reading.moment.loads = LoadsAre::constant_current;
    reading.moment.current = amperes * si::ampere;
    return reading;
}

Fault const& first_fault(TraceResult const& result) {
    REQUIRE_FALSE(result.diagnoses.empty());
    REQUIRE_FALSE(result.diagnoses.front().faults.empty());
    return result.diagnoses.front().faults.front();
}

} // namespace

TEST_CASE("before anything was read, nothing is known and a reading is asked for") {
    auto const result = trace(jon_boat(), {});
    REQUIRE(result.next);
    CHECK(result.next->bits > 0.1);
    CHECK(result.next->red != result.next->black);
    CHECK(result.explained);
    double sum = 0.0;
    for (auto const& diagnosis : result.diagnoses)
        sum += diagnosis.probability;
    CHECK(sum == doctest::Approx(1.0).epsilon(0.05)); // what is below 0.1 % is left out
}

// By hand: 12.8 V, of which 0.8 % is open; the meter's limit at 12.6 V is 0.083 V, its deviation that over sqrt 3.
TEST_CASE("the misfit is the residual over what the meter and the parts leave open") {
    auto const result = trace(jon_boat(), {volts("A+", "A-", 12.6)});
    double const meter = 0.083 / std::sqrt(3.0), battery = 0.008 * 12.8;
    for (auto const& diagnosis : result.diagnoses)
        if (diagnosis.faults.empty()) CHECK(diagnosis.misfit == doctest::Approx(0.2 / std::hypot(meter, battery)));
    CHECK(result.explained);
}

TEST_CASE("a turned battery is found with a second reading") {
    // C+ to A- reads the three with B against them: 12.9 V. A+ to B+ then reads 0 V: A+ is joined to what is B's plus.
    auto const result = trace(jon_boat(), {volts("C+", "A-", 12.9), volts("A+", "B+", 0.0)});
    CHECK(first_fault(result).kind == FaultKind::reversed);
    CHECK(first_fault(result).part == "B");
    CHECK(result.diagnoses.front().probability > 0.9);
}

TEST_CASE("a bad joint is found under load, and its resistance with it") {
    // 20 A through 100 milliohm more in `main`: 2.24 V over it.
    auto const result = trace(jon_boat(), {under_load(volts("CB.load", "bow+", 2.24), 20.0),
                                           under_load(volts("CB.line", "CB.load", 0.02), 20.0)});
    CHECK(first_fault(result).kind == FaultKind::resistive);
    CHECK(first_fault(result).part == "main");
    auto const& detail = first_fault(result).detail; // "68 mohm to 110 mohm more than it should", or "about ..."
    auto const to = detail.find(" to ");
    double const low = std::stod(detail.substr(detail.find_first_of("0123456789")));
    double const high = to == std::string::npos ? low : std::stod(detail.substr(to + 4));
    CHECK(low > 100.0 / (1.6 * 1.6)); // two steps of its ladder
    CHECK(low < 100.0 * 1.3);
    CHECK(high > 100.0 / 1.3);
    CHECK(high < 100.0 * 1.6 * 1.6);
}

TEST_CASE("a current tells too") {
    TakenReading none;
    none.what = AmpsRead{"main", 0.0 * si::ampere};
    none.moment = {}; // the motor is on
    auto const result = trace(jon_boat(), {none, volts("CB.load", "A-", 38.1), volts("bow+", "A-", 0.0),
                                           volts("bow-", "A-", 0.0)}); // were its leads exchanged, 38.1 V
    CHECK(first_fault(result).part == "main");
    CHECK(first_fault(result).kind == FaultKind::missing);
}

// The jon boat's motor is asked for 45 A: a clamp that reads nothing there has found what no volt at rest tells.
TEST_CASE("a current is read at a load and at a breaker, too") {
    auto const read = [](char const* part, double amperes) {
        TakenReading reading;
        reading.what = AmpsRead{part, amperes * si::ampere};
        return under_load(reading, 45.0);
    };
    CHECK(trace(jon_boat(), {read("troll", 45.0)}).explained);
    auto const result = trace(jon_boat(), {read("troll", 0.0)});
    for (auto const& diagnosis : result.diagnoses)
        CHECK(!diagnosis.faults.empty());
    CHECK(trace(jon_boat(), {read("CB", 45.0)}).explained);
}

TEST_CASE("what no reading can tell apart is one group") {
    // B turned, or J1 past B and C: onto C+, or onto either side of the breaker, which is the same but for milliohms.
    auto bank = jon_boat();
    bank.cables[0].conductor.length = 0.2 * si::meter; // the breaker is beside the batteries
    auto const result = trace(bank, {volts("C+", "A-", 12.8), volts("A+", "A-", 12.8)});
    bool any = false;
    for (auto const& diagnosis : result.diagnoses)
        any = any || !diagnosis.alike.empty();
    CHECK(any);
}

TEST_CASE("more than the bank can give is doubted, and explains nothing") {
    auto const result = trace(jon_boat(), {volts("A+", "A-", 480.0), volts("B+", "B-", -310.0)});
    CHECK_FALSE(result.explained);
    REQUIRE(result.doubtful.size() == 2);
    CHECK(result.doubtful[0].why == DoubtfulReading::Why::impossible);
    REQUIRE(result.next);
    CHECK(result.next->again);
}

namespace {

using Why = DoubtfulReading::Why;

std::vector<std::pair<std::size_t, Why>> doubts_of(TraceResult const& result) {
    std::vector<std::pair<std::size_t, Why>> doubts;
    for (auto const& one : result.doubtful)
        doubts.emplace_back(one.reading, one.why);
    return doubts;
}
using Doubts = std::vector<std::pair<std::size_t, Why>>;

} // namespace

// What a meter shows of a sound bank, but for one slip of who reads it.
TEST_CASE("one slip in reading is doubted, named and asked for again, and the other readings count") {
    auto const at_a = volts("A+", "A-", 12.8), at_b = volts("B+", "B-", 12.6), whole = volts("C+", "A-", 38.1);
    auto const again = [](TraceResult const& result, std::string const& red) {
        return result.next && result.next->again && result.next->red == red;
    };
    auto result = trace(jon_boat(), {at_a, volts("B+", "B-", -12.6), whole});
    CHECK(doubts_of(result) == Doubts{{1, Why::leads_exchanged}});
    CHECK(again(result, "B+"));
    CHECK(result.explained);
    result = trace(jon_boat(), {at_a, volts("B+", "B-", 126.0), whole});
    CHECK(doubts_of(result) == Doubts{{1, Why::decimal_point}});
    CHECK(again(result, "B+"));
    result = trace(jon_boat(), {volts("A+", "A-", 1.28), at_b, whole});
    CHECK(doubts_of(result) == Doubts{{0, Why::decimal_point}});
    result = trace(jon_boat(), {volts("A+", "A-", -12.8), volts("B+", "B-", -12.6), volts("C+", "A-", -38.1)});
    CHECK(doubts_of(result) ==
          Doubts{{0, Why::leads_exchanged}, {1, Why::leads_exchanged}, {2, Why::leads_exchanged}}); // in the jacks
    CHECK(trace(jon_boat(), {at_a, at_b, whole}).doubtful.empty());
}

// A lead-acid battery at rest never shows 13.2 V: that is surface charge (common practice, no source).
TEST_CASE("a battery fresh from its charger is told to rest") {
    auto bank = jon_boat();
    for (auto& battery : bank.batteries) {
        battery.chemistry = Chemistry::flooded;
        battery.emf.reset();
    }
    auto result = trace(bank, {volts("A+", "A-", 13.2), volts("B+", "B-", 12.7)});
    CHECK(doubts_of(result) == Doubts{{0, Why::not_rested}});
    CHECK(result.diagnoses.front().faults.empty());
    result = trace(bank, {under_load(volts("A+", "A-", 12.5), 10.0), volts("B+", "B-", 12.7)});
    CHECK(result.doubtful.empty());
}

TEST_CASE("what was read twice the same is believed") {
    auto const result =
        trace(jon_boat(), {volts("B+", "B-", -12.6), volts("A+", "A-", 12.8), volts("B+", "B-", -12.61)});
    CHECK(result.doubtful.empty());
}

// By hand: the two leads on the motor's plug stand each where the other should.
TEST_CASE("a crossed pair is one mistake, far likelier than batteries turned") {
    auto const result = trace(jon_boat(), {volts("troll+", "troll-", -38.1)});
    CHECK(first_fault(result).kind == FaultKind::exchanged);
    CHECK(result.diagnoses.front().faults.size() == 1);
    auto const told = trace(jon_boat(), {volts("troll+", "troll-", -38.1), volts("bow+", "bow-", -38.1)});
    CHECK(first_fault(told).part == "bow");
    CHECK(first_fault(told).detail == "receptacle side");
}

TEST_CASE("what has run is not miswired: wear, corrosion and trips are left, or a slip in reading") {
    TraceOptions options;
    options.since = Since::it_ran;
    auto const nothing = trace(jon_boat(), {volts("troll+", "troll-", 0.0)}, options);
    CHECK(first_fault(nothing).kind == FaultKind::open);
    for (auto const& diagnosis : nothing.diagnoses)
        for (auto const& fault : diagnosis.faults)
            CHECK(fault.kind != FaultKind::moved);
    auto const turned = trace(jon_boat(), {volts("troll+", "troll-", -38.1)}, options);
    CHECK(doubts_of(turned) == Doubts{{0, Why::leads_exchanged}});
}

TEST_CASE("after work on the bank a turned battery is likelier than before") {
    auto const chance_of_turned = [](std::optional<Since> since) {
        TraceOptions options;
        options.since = since;
        double chance = 0.0;
        for (auto const& diagnosis : trace(jon_boat(), {volts("C+", "A-", 12.9)}, options).diagnoses)
            for (auto const& fault : diagnosis.faults)
                if (fault.kind == FaultKind::reversed) chance += diagnosis.probability;
        return chance;
    };
    CHECK(chance_of_turned(Since::work_on_the_bank) >= chance_of_turned(std::nullopt));
}

// Two strings of one battery, the motor on. Is one of them open? Volts hardly tell, a clamp around a link does.
TEST_CASE("with a clamp at hand a current is asked for where it tells more") {
    Bank bank = jon_boat();
    bank.batteries = {support::plain_battery("A", 12.7, 4e-3), support::plain_battery("B", 12.7, 4e-3)};
    bank.jumpers = {support::plain_run("P", "A+", "B+", 0.2e-3), support::plain_run("N", "A-", "B-", 0.2e-3)};
    bank.cables[0].from = "A+"; // feed
    bank.cables[2].to = "A-";   // return
    bank.motors[0].voltage = 12.0 * si::volt;
    TraceOptions options;
    options.clamp_at_hand = true;
    FaultTracer tracer(bank, options);
    std::vector<TakenReading> readings;
    auto result = tracer.trace(readings);
    bool is_current_asked = false;
    for (int n = 0; n < 10 && result.next; ++n) { // all is as it should be: the first that is expected
        auto const& next = *result.next;
        TakenReading taken;
        if (next.part.empty())
            taken.what = VoltsRead{next.red, next.black, next.expected.front().reads};
        else
            taken.what = AmpsRead{next.part, next.expected.front().flows};
        taken.moment = next.moment;
        is_current_asked = is_current_asked || !next.part.empty();
        readings.push_back(taken);
        result = tracer.trace(readings);
    }
    CHECK(is_current_asked);
    CHECK(result.diagnoses.front().faults.empty());
    // 40 A of the motor's through A alone, none through the link to B.
    Moment const running;
    auto const no_current = [&](char const* part) {
        TakenReading reading;
        reading.what = AmpsRead{part, 0.0 * si::ampere};
        reading.moment = running;
        return reading;
    };
    auto const open = trace(bank, {no_current("P"), volts("B+", "B-", 12.7), volts("A+", "A-", 12.7)}, options);
    CHECK_FALSE(first_fault(open).part == "A");
    CHECK_FALSE(open.diagnoses.front().faults.empty());
}

TEST_CASE("the next reading has both leads in one place wherever one place tells enough") {
    auto bank = jon_boat();
    bank.cables[0].conductor.length = 0.2 * si::meter;
    for (std::size_t tail : {3u, 4u})
        bank.cables[tail].conductor.length = 1.0 * si::meter;
    auto const first = trace(bank, {});
    REQUIRE(first.next);
    CHECK(first.next->places.size() == 1);
    // Nothing at the bow and all in the box: either long lead is open, and no one place tells which.
    auto const open = trace(bank, {volts("bow+", "bow-", 0.0), volts("CB.load", "A-", 38.1)});
    REQUIRE(open.next);
    CHECK(open.next->places.size() == 2);
}

TEST_CASE("a loop that drives a current at rest is said before anybody reads on") {
    // J2 from B+ onto B-: B is shorted by a jumper. It still shows some of its voltage, 1/6.
    auto const result = trace(jon_boat(), {volts("B+", "B-", 2.1)});
    CHECK(result.current_at_rest);
    if (result.next) CHECK(result.next->moment.loads == LoadsAre::at_rest);
}

TEST_CASE("two faults at once are found where none alone explains the readings") {
    // A turned, so that J1 is on its minus and `return` on its plus: 12.5 V at the bank; and none of it at the bow.
    auto const result = trace(jon_boat(), {volts("A+", "A-", 12.8), volts("C+", "A-", 25.3), volts("A+", "B-", 12.8),
                                           volts("CB.load", "bow-", 12.5), volts("bow+", "bow-", 0.0)});
    auto const& faults = result.diagnoses.front().faults;
    REQUIRE(faults.size() == 2);
    bool turned = false, off = false;
    for (auto const& fault : faults) {
        turned = turned || (fault.kind == FaultKind::reversed && fault.part == "A");
        off = off || fault.part == "main";
    }
    CHECK(turned);
    CHECK(off);
    CHECK(result.explained);
}

TEST_CASE("tracing again with one reading more gives what tracing at once gives") {
    auto const bank = jon_boat();
    std::vector<TakenReading> const readings{volts("C+", "A-", 12.9), volts("A+", "B+", 0.0)};
    FaultTracer tracer(bank);
    tracer.trace({readings.front()});
    auto const again = tracer.trace(readings), at_once = trace(bank, readings);
    REQUIRE(again.diagnoses.size() == at_once.diagnoses.size());
    for (std::size_t d = 0; d < again.diagnoses.size(); ++d)
        CHECK(again.diagnoses[d].probability == doctest::Approx(at_once.diagnoses[d].probability).epsilon(1e-9));
}

// Ideal parts: which way a current goes is known, what a meter reads there is not known as well.
TEST_CASE(
    "currents through parts without resistance, and where there is no operating point, tell little and throw nothing") {
    auto bank = jon_boat();
    bank.breakers[0].resistance.reset();
    TakenReading reading;
    reading.what = AmpsRead{"CB", 45.0 * si::ampere};
    CHECK(trace(bank, {under_load(reading, 45.0)}).explained);
    Load pump;
    pump.id = "pump";
    pump.power = 1e6 * si::watt;
    bank.loads.push_back(pump);
    bank.cables.push_back(support::plain_run("pp", "C+", "pump+", 1e-3));
    bank.cables.push_back(support::plain_run("pn", "pump-", "A-", 1e-3));
    reading.what = AmpsRead{"J1", 45.0 * si::ampere};
    reading.moment = {}; // loads as described: no bank gives a megawatt
    CHECK_NOTHROW(trace(bank, {reading}));
    bank.loads.clear();
    bank.cables.resize(bank.cables.size() - 2);
    Charger shore;
    shore.id = "shore";
    shore.voltage = 43.0 * si::volt;
    shore.current = 10.0 * si::ampere;
    shore.connected = true;
    bank.chargers = {shore};
    bank.cables.push_back(support::plain_run("sp", "C+", "shore.1+", 1e-3));
    bank.cables.push_back(support::plain_run("sn", "shore.1-", "A-", 1e-3));
    CHECK_NOTHROW(trace(bank, {reading}));
}

TEST_CASE("a sheet says what the loads did at each reading") {
    ReadingSheet sheet;
    sheet.volts = {{"A+", "A-", 12.8 * si::volt, {}},
                   {"A+", "A-", 12.4 * si::volt, {.rest = {}, .throttle = {}, .current = 20.0 * si::ampere}},
                   {"A+", "A-", 12.5 * si::volt, {.rest = {}, .throttle = Throttle::of(0.5), .current = {}}},
                   {"A+", "A-", 12.3 * si::volt, {.rest = false, .throttle = {}, .current = {}}}};
    sheet.amps = {{"J1", 20.0 * si::ampere, {.rest = true, .throttle = {}, .current = {}}}};
    auto const readings = readings_of(sheet);
    REQUIRE(readings.size() == 5);
    CHECK(readings[0].moment.loads == LoadsAre::at_rest);
    CHECK(readings[1].moment.loads == LoadsAre::constant_current);
    CHECK(readings[1].moment.current == 20.0 * si::ampere);
    CHECK(readings[2].moment.loads == LoadsAre::as_described);
    CHECK(readings[2].moment.throttle == Throttle::of(0.5));
    CHECK(readings[3].moment.loads == LoadsAre::as_described);
    CHECK(!readings[3].moment.throttle);
    CHECK(readings[4].moment.loads == LoadsAre::at_rest);
}

TEST_CASE("the order of the readings does not matter") {
    std::vector<TakenReading> readings{volts("C+", "A-", 12.9), volts("A+", "B+", 0.0), volts("C+", "C-", 12.7)};
    auto const forwards = trace(jon_boat(), readings);
    std::swap(readings.front(), readings.back());
    auto const backwards = trace(jon_boat(), readings);
    CHECK(forwards.diagnoses.front().probability ==
          doctest::Approx(backwards.diagnoses.front().probability).epsilon(1e-6));
}

TEST_CASE("a caller's mistakes throw") {
    CHECK_THROWS_AS(trace(jon_boat(), {volts("Z+", "A-", 1.0)}), std::invalid_argument);
    TakenReading amps;
    amps.what = AmpsRead{"nothing", 1.0 * si::ampere};
    CHECK_THROWS_AS(trace(jon_boat(), {amps}), std::invalid_argument);
    CHECK_THROWS_AS(trace(jon_boat(), {volts("A+", "A-", std::nan(""))}), std::invalid_argument);
    CHECK_THROWS_AS(trace(Bank{}, {}), std::invalid_argument);
    CHECK(unfit_for_trace(Bank{}));
    CHECK_FALSE(unfit_for_trace(jon_boat()));
    auto large = jon_boat();
    for (int n = 0; n < 1400; ++n)
        large.cables.push_back(support::plain_run("c" + std::to_string(n), "C+", "CB.line", 1e-3));
    CHECK_FALSE(unfit_for_trace(large)); // 1407 conductors, 14 terminals
    for (int n = 0; n < 400; ++n)
        large.cables.push_back(support::plain_run("d" + std::to_string(n), "C+", "CB.line", 1e-3));
    CHECK(unfit_for_trace(large));
}
