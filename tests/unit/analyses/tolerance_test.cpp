#include "bankwright/analyses/operating_point.hpp"
#include "bankwright/analyses/tolerance.hpp"
#include "bankwright/devices/battery_capacity.hpp"
#include "bankwright/devices/battery_resistance.hpp"
#include "bankwright/units/literals.hpp"
#include "unit/sizing/random_boats.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include <doctest/doctest.h>

using namespace bankwright;
using namespace bankwright::literals;

namespace {

Run wire(char const* id, char const* from, char const* to, Resistance ohms) {
    Run run;
    run.conductor.id = id;
    run.conductor.resistance = ohms;
    run.from = from;
    run.to = to;
    return run;
}

// 12.8 V behind 5 mohm, and 2 x 2 mohm of cable, feed 50 A.
Bank lamp_on_a_battery() {
    Bank bank;
    Battery battery;
    battery.id = "A";
    battery.emf = 12.8_V;
    battery.resistance = 5_mohm;
    battery.voltage = 12_V;
    bank.batteries = {battery};
    bank.cables = {wire("p", "A+", "L+", 2_mohm), wire("n", "L-", "A-", 2_mohm)};
    Load lamp;
    lamp.id = "L";
    lamp.current = 50_A;
    bank.loads = {lamp};
    return bank;
}

Spreads none() {
    auto const zero = Spread::of(0.0);
    return {zero, zero, zero, zero, zero, zero};
}

double volts_of(Bank const& bank, char const* part) { return reading_of(operating_point(bank), part).voltage.value(); }

} // namespace

// V = E - I (R + r1 + r2) is linear: its extremes are the sums of all, and an even spread of half width w deviates by
// w / sqrt 3, apart from all others.
TEST_CASE("behind one battery the spread is what a hand can work out") {
    auto bank = lamp_on_a_battery();
    bank.tolerances = {{"A", "resistance", Spread::percent(20)},
                       {"A", "emf", Spread::percent(1)},
                       {"p", "resistance", Spread::percent(50)}};
    ToleranceOptions options;
    options.spreads = none();
    options.samples = 1'000'000;
    auto const result = tolerance(bank, options);
    REQUIRE(result.solved);
    CHECK(result.unanswered == 0);
    CHECK(result.varied.size() == 3);
    auto const& lamp = result.answers.front();
    CHECK(lamp.part == "L");
    CHECK(lamp.unit == "V");
    double const stated = 12.8 - 50.0 * 9e-3;
    double const emf = 0.128, inner = 50.0 * 1e-3, cable = 50.0 * 1e-3; // [V] half widths
    CHECK(lamp.as_stated == doctest::Approx(stated));
    CHECK(lamp.worst_least == doctest::Approx(stated - emf - inner - cable));
    CHECK(lamp.worst_most == doctest::Approx(stated + emf + inner + cable));
    auto const squares = emf * emf + inner * inner + cable * cable;
    CHECK(lamp.mean == doctest::Approx(stated).epsilon(1e-4));
    CHECK(lamp.deviation == doctest::Approx(std::sqrt(squares / 3.0)).epsilon(5e-3));
    REQUIRE(lamp.influences.size() == 3);
    CHECK(lamp.influences[0].key == "emf");
    CHECK(lamp.influences[0].swing == doctest::Approx(2.0 * emf));
    CHECK(lamp.influences[0].share == doctest::Approx(emf * emf / squares));
}

TEST_CASE("no draw is beyond the worst case, on any boat") {
    for (unsigned seed = 0; seed < 25; ++seed) {
        CAPTURE(seed);
        ToleranceOptions options;
        options.samples = 3000;
        options.seed = seed;
        auto const boat = boats::RandomBoat(seed).make();
        auto const result = tolerance(boat, options);
        if (!result.solved) continue;
        for (auto const& answer : result.answers) {
            CAPTURE(answer.part);
            CHECK(answer.worst_least <= answer.least + 1e-9);
            CHECK(answer.worst_most >= answer.most - 1e-9);
            CHECK(answer.as_stated ==
                  doctest::Approx(answer.unit == "V" ? volts_of(boat, answer.part.c_str())
                                                     : reading_of(operating_point(boat), answer.part).current.value())
                      .epsilon(1e-9));
        }
    }
}

// Every corner, one by one, through another door than the batch solver's.
TEST_CASE("the worst corners are the worst of all corners") {
    auto bank = lamp_on_a_battery();
    auto other = bank.batteries.front();
    other.id = "B";
    other.resistance = 7_mohm;
    bank.batteries.push_back(other);
    bank.cables.push_back(wire("x", "A+", "B+", 1_mohm));
    bank.cables.push_back(wire("y", "A-", "B-", 1_mohm));
    ToleranceOptions options;
    options.spreads = none();
    options.spreads.resistance = Spread::percent(30);
    options.spreads.conductor = Spread::percent(40);
    options.samples = 100;
    auto const result = tolerance(bank, options);
    double least = 1e9, most = -1e9;
    for (unsigned corner = 0; corner < 64; ++corner) {
        auto at = bank;
        auto const factor = [&](int bit, double spread) { return 1.0 + ((corner >> bit) & 1u ? spread : -spread); };
        for (int b = 0; b < 2; ++b) {
            auto& battery = at.batteries[static_cast<std::size_t>(b)];
            battery.resistance = *battery.resistance * factor(b, 0.3);
        }
        for (int c = 0; c < 4; ++c) {
            auto& cable = at.cables[static_cast<std::size_t>(c)].conductor;
            cable.resistance = *cable.resistance * factor(2 + c, 0.4);
        }
        auto const amps = reading_of(operating_point(at), "A").current.value();
        least = std::min(least, amps);
        most = std::max(most, amps);
    }
    auto const& answer = result.answers[1];
    CHECK(answer.part == "A");
    CHECK(answer.worst_least == doctest::Approx(least).epsilon(1e-9));
    CHECK(answer.worst_most == doctest::Approx(most).epsilon(1e-9));
}

// As stated A is charged by B, where more resistance in A's string raises its current; at the worst A gives, where less
// does. The corner by hand: i = (EA - EB + I RB) / (RA + RB), its ends by trying all sixteen.
TEST_CASE("the worst corner is found where a battery turns from being charged to giving") {
    auto bank = lamp_on_a_battery();
    bank.batteries[0].emf = 12.70_V;
    auto other = bank.batteries.front();
    other.id = "B";
    other.emf = 12.71_V;
    bank.batteries.push_back(other);
    bank.cables.push_back(wire("x", "A+", "B+", 1_mohm));
    bank.cables.push_back(wire("y", "A-", "B-", 1_mohm));
    bank.loads[0].current = 0.5_A;
    bank.tolerances = {{"A", "emf", Spread::percent(0.4)}, {"B", "emf", Spread::percent(0.4)}};
    ToleranceOptions options;
    options.spreads = none();
    options.spreads.resistance = Spread::percent(30);
    options.samples = 20'000;
    auto const result = tolerance(bank, options);
    double least = 1e9, most = -1e9;
    for (unsigned corner = 0; corner < 16; ++corner) {
        auto const end = [&](unsigned bit, double spread) { return 1.0 + ((corner >> bit) & 1u ? spread : -spread); };
        double const ra = 5e-3 * end(0, 0.3), rb = 5e-3 * end(1, 0.3) + 2e-3; // B behind x and y [ohm]
        auto const amps = (12.70 * end(2, 0.004) - 12.71 * end(3, 0.004) + 0.5 * rb) / (ra + rb);
        least = std::min(least, amps);
        most = std::max(most, amps);
    }
    auto const& answer = result.answers[1];
    REQUIRE(answer.part == "A");
    CHECK(answer.as_stated < 0.0);
    CHECK(answer.worst_least == doctest::Approx(least).epsilon(1e-9));
    CHECK(answer.worst_most == doctest::Approx(most).epsilon(1e-9));
}

TEST_CASE("the same seed gives the same answer on any number of threads, to the last bit, and another seed another") {
    auto const boat = boats::RandomBoat(11).make();
    ToleranceOptions options;
    options.samples = 5000;
    auto const one = tolerance(boat, options);
    for (int threads : {2, 7}) {
        options.threads = threads;
        auto const more = tolerance(boat, options);
        for (std::size_t i = 0; i < one.answers.size(); ++i) {
            CHECK(one.answers[i].mean == more.answers[i].mean);
            CHECK(one.answers[i].deviation == more.answers[i].deviation);
        }
    }
    options.seed = 2;
    CHECK(one.answers[0].mean != tolerance(boat, options).answers[0].mean);
}

TEST_CASE("a bank without an operating point does not vary") {
    auto bank = lamp_on_a_battery();
    bank.loads[0].current.reset();
    bank.loads[0].power = 1e5 * si::watt;
    CHECK_FALSE(tolerance(bank).solved);
}

// Its negative lead left off, the lamp has one terminal at 12.8 V and one that floats: no meter and no sum says what
// lies between them.
TEST_CASE("what floats has no voltage, and no spread of one") {
    auto bank = lamp_on_a_battery();
    bank.cables.pop_back();
    for (auto const loads : {LoadsAre::as_described, LoadsAre::at_rest}) {
        ToleranceOptions options;
        options.moment.loads = loads;
        options.samples = 1000;
        auto const result = tolerance(bank, options);
        REQUIRE(result.solved);
        REQUIRE(result.answers.size() == 2);
        for (double const shown :
             {result.answers[0].as_stated, result.answers[0].mean, result.answers[0].deviation, result.answers[0].least,
              result.answers[0].most, result.answers[0].worst_least, result.answers[0].worst_most})
            CHECK(std::isnan(shown));
        CHECK(result.answers[0].influences.empty());
        CHECK(result.answers[1].as_stated == doctest::Approx(0.0)); // the battery gives no current, and that is known
    }
}

// 12.8 V gives 3.5 kW behind at most V^2 / 4 P = 11.7 mohm: stated are 9, drawn up to 13.4.
TEST_CASE("where a corner asks for more than there is, the worst is no better than the samples") {
    auto bank = lamp_on_a_battery();
    bank.loads[0].current.reset();
    bank.loads[0].power = 3.5e3 * si::watt;
    bank.tolerances = {{"A", "resistance", Spread::percent(80)}};
    ToleranceOptions options;
    options.spreads = none();
    options.spreads.conductor = Spread::percent(10);
    options.samples = 20'000;
    auto const result = tolerance(bank, options);
    REQUIRE(result.solved);
    CHECK(result.unanswered > 0);
    for (auto const& answer : result.answers) {
        CAPTURE(answer.part);
        CHECK(answer.worst_least <= answer.least);
        CHECK(answer.worst_most >= answer.most);
        double shares = 0.0;
        for (auto const& influence : answer.influences)
            shares += influence.share;
        CHECK(shares == doctest::Approx(1.0));
    }
}

TEST_CASE("the two contacts of a receptacle are told apart") {
    auto bank = lamp_on_a_battery();
    Connector bow;
    bow.id = "bow";
    bow.contact = 1_mohm;
    bank.connectors = {bow};
    bank.cables[0].to = "bow+";
    bank.cables[1].from = "bow-";
    bank.cables.push_back(wire("q", "bow.plug+", "L+", 1_mohm));
    bank.cables.push_back(wire("m", "L-", "bow.plug-", 1_mohm));
    ToleranceOptions options;
    options.spreads = none();
    options.spreads.contact = Spread::percent(50);
    options.samples = 1000;
    auto const result = tolerance(bank, options);
    REQUIRE(result.varied.size() == 2);
    CHECK(result.varied[0].key == "positive contact");
    CHECK(result.varied[1].key == "negative contact");
}

TEST_CASE("a sample bank stays within its tolerances, and the same number gives the same bank") {
    auto const boat = boats::RandomBoat(4).make();
    Spreads const spreads;
    CHECK(sample_bank(boat, spreads, 1, 7) == sample_bank(boat, spreads, 1, 7));
    CHECK_FALSE(sample_bank(boat, spreads, 1, 7) == sample_bank(boat, spreads, 1, 8));
    for (std::uint64_t n = 0; n < 200; ++n) {
        auto const drawn = sample_bank(boat, spreads, 1, n);
        for (std::size_t b = 0; b < boat.batteries.size(); ++b) {
            auto const ratio = (*drawn.batteries[b].capacity / *boat.batteries[b].capacity).value();
            CHECK(std::abs(ratio - 1.0) <= 0.05 * (1.0 + 1e-9));
            CHECK(drawn.batteries[b].charge->value() >= 0.98 - 1e-12);
        }
    }
}

// What nobody states is drawn as widely as it is unknown: the exponent over its usual range (common practice, 1.05 to
// 1.15 for AGM), wear down to where a battery is due for another (80 %), the resistance by 40 %.
TEST_CASE("what is assumed of a battery is drawn as widely as it is unknown, and what is stated is not") {
    Bank bank;
    for (auto const* id : {"A", "B"}) {
        Battery battery;
        battery.id = id;
        battery.chemistry = Chemistry::agm;
        battery.voltage = 12.0 * si::volt;
        battery.capacity = 100.0 * 3600.0 * si::coulomb;
        bank.batteries.push_back(battery);
    }
    auto const usual = internal_resistance(bank.batteries[0], celsius(25.0)).value();
    double least = 2.0, most = 0.0, worn = 1.0, low = 1.0, high = 1.0;
    for (std::uint64_t n = 0; n < 500; ++n) {
        auto const drawn = sample_bank(bank, {}, 1, n);
        auto const& one = drawn.batteries[0];
        auto const exponent = peukert_exponent(one);
        least = std::min(least, exponent);
        most = std::max(most, exponent);
        worn = std::min(worn, one.health->value());
        low = std::min(low, one.resistance->value() / usual);
        high = std::max(high, one.resistance->value() / usual);
        CHECK(*one.health == *drawn.batteries[1].health); // they age together
    }
    CHECK(least == doctest::Approx(1.05).epsilon(0.002));
    CHECK(most == doctest::Approx(1.15).epsilon(0.002));
    CHECK(worn == doctest::Approx(0.8).epsilon(0.01));
    CHECK(low == doctest::Approx(0.6).epsilon(0.02));
    CHECK(high == doctest::Approx(1.4).epsilon(0.02));
    bank.batteries[0].health = Health::of(0.9);
    CHECK(*sample_bank(bank, {}, 1, 3).batteries[0].health == Health::of(0.9));
}
