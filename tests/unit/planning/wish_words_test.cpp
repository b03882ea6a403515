#include "bankwright/planning/wish_words.hpp"

#include <string>
#include <utility>

#include <doctest/doctest.h>

using namespace bankwright;

TEST_SUITE_BEGIN("planning/wish_words");

namespace {

std::string understood(WishPart part, std::string_view text) {
    auto const read = read_answer(part, text);
    return read.problem.empty() ? read.understood : "problem: " + read.problem;
}

WishWords usual() { return {"36 V", "45 A", "20 ft", "4 h", "", "", "", "", "", ""}; }

} // namespace

TEST_CASE("units as people type them, and what a bare number stands for") {
    for (auto const* text : {"36", "36v", "36 V", " 36  volts", "36Volt"})
        CHECK(understood(WishPart::system, text) == "36 V");
    for (auto const* text : {"20", "20ft", "20 feet", "20 foot", "20'", "20 FT"})
        CHECK(understood(WishPart::run, text) == "20 ft");
    CHECK(understood(WishPart::run, "5 ft 6 in") == "5 ft 6 in");
    CHECK(understood(WishPart::run, "5'6\"") == "5 ft 6 in");
    CHECK(understood(WishPart::run, "6.5m") == "6.5 m");
    for (auto const* text : {"4", "4h", "4 hours", "4 hrs", "4 HR"})
        CHECK(understood(WishPart::runtime, text) == "4 h");
    for (auto const* text : {"1:30", "1h30", "1 h 30 min", "1hour 30 minutes"})
        CHECK(understood(WishPart::runtime, text) == "1 h 30 min");
    CHECK(understood(WishPart::runtime, "90min") == "90 min");
    for (auto const* text : {"45", "45a", "45 amps", "45A"})
        CHECK(understood(WishPart::motor, text) == "45 A");
    CHECK(understood(WishPart::motor, "80lb") == "80 lbf");
    CHECK(understood(WishPart::motor, "80 pounds") == "80 lbf");
    CHECK(understood(WishPart::motor, "1.6kW") == "1.6 kW");
    CHECK(understood(WishPart::motor, "3 HP") == "3 hp");
    CHECK(understood(WishPart::throttle, "60") == "60 %");
    CHECK(understood(WishPart::drop, "5%") == "5 %");
    CHECK(understood(WishPart::charger, "none") == "none");
    CHECK(understood(WishPart::stock, "10awg, 6 AWG,2/0") == "10 AWG, 6 AWG, 2/0 AWG");
}

TEST_CASE("labels and chemistries") {
    for (auto const* text : {"12 V AGM 100 Ah", "12v agm 100ah", "100Ah 12V AGM", "AGM 12 volt 100 ah"})
        CHECK(understood(WishPart::battery, text) == "12 V AGM 100 Ah");
    CHECK(understood(WishPart::battery, "6v wet 220ah") == "6 V flooded 220 Ah");
    CHECK(understood(WishPart::battery, "12 V LiFePO4 100 Ah") == "12 V LiFePO4 100 Ah");
    for (auto const* text : {"lithium", "LiFePO4", "lfp", "lithium iron phosphate"})
        CHECK(understood(WishPart::chemistry, text) == "LiFePO4");
    CHECK(understood(WishPart::chemistry, "lead-acid") == "flooded");
}

TEST_CASE("what cannot be meant is refused in words") {
    std::pair<WishPart, char const*> const wrong[]{
        {WishPart::system, "fish"},
        {WishPart::system, "36 A"},
        {WishPart::system, "360"},
        {WishPart::system, "-36"},
        {WishPart::system, "1e9 V"},
        {WishPart::motor, "0"},
        {WishPart::motor, "45 ft"},
        {WishPart::motor, "45 A 3"},
        {WishPart::run, "20 parsecs"},
        {WishPart::run, "2,5 m"},
        {WishPart::run, "0"},
        {WishPart::runtime, "4 V"},
        {WishPart::runtime, "1000 h"},
        {WishPart::throttle, "150 %"},
        {WishPart::drop, "0 %"},
        {WishPart::battery, "12 V AGM 1e"},
        {WishPart::battery, "12 12"},
        {WishPart::battery, "AGM gel"},
        {WishPart::battery, "12 V 24 V"},
        {WishPart::chemistry, "uranium"},
        {WishPart::chemistry, "12 V"},
        {WishPart::charger, "-1"},
        {WishPart::stock, "10 AWG, rope"},
        {WishPart::run, ""},
        {WishPart::motor, "\x1b[31m"},
        {WishPart::battery, "\xff\xfe"},
        {WishPart::system, ". V"},
    };
    for (auto const& each : wrong) {
        auto const part = each.first; // a name bound to a part of it could not be captured, says clang 14
        auto const& text = each.second;
        CAPTURE(name(part));
        CAPTURE(text);
        auto const read = read_answer(part, text);
        CHECK_FALSE(read.problem.empty());
        CHECK(read.problem.find('\x1b') == std::string::npos);
    }
}

TEST_CASE("all that is missing or wrong is said at once") {
    auto words = usual();
    CHECK(read_wish(words).wish);
    words.motor.clear();
    words.run = "far";
    words.drop = "0";
    auto const read = read_wish(words);
    CHECK_FALSE(read.wish);
    REQUIRE(read.problems.size() == 3);
    CHECK(read.problems[0].part == WishPart::motor);
    CHECK(read.problems[1].part == WishPart::run);
    CHECK(read.problems[2].part == WishPart::drop);
}

TEST_CASE("two parts of a wish that contradict each other") {
    auto words = usual();
    words.battery = "12 V AGM 100 Ah";
    words.chemistry = "lithium";
    auto const read = read_wish(words);
    REQUIRE(read.problems.size() == 1);
    CHECK(read.problems[0].part == WishPart::chemistry);
}

// Ideal power of a propeller at rest: P = T^1.5 / sqrt(2 rho A) [momentum theory, from memory]. 400 N on a disk of 10
// in: 8000 / sqrt(2 * 1000 * 0.050671) = 794.7 W; twice that is drawn, 44.1 A of 36 V, and whole amperes are told.
TEST_CASE("what a motor of so much thrust or power takes") {
    Wish wish;
    wish.system = 36.0 * si::volt;
    wish.thrust = 400.0 * si::newton;
    CHECK(motor_current(wish).value() == doctest::Approx(45.0));
    wish.power = 1800.0 * si::watt;
    CHECK(motor_current(wish).value() == doctest::Approx(50.0));
}

TEST_SUITE_END();
