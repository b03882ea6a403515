#include "bankwright/page/html/sentences.hpp"
#include "bankwright/units/literals.hpp"

#include <limits>

#include <doctest/doctest.h>

using namespace bankwright;
using namespace bankwright::literals;

TEST_CASE("a message becomes a sentence, and a name stays as it is written") {
    CHECK(page::sentence("battery `B` is the wrong way around") == "Battery `B` is the wrong way around.");
    CHECK(page::sentence("`j1` is on the wrong post") == "`j1` is on the wrong post.");
    CHECK(page::sentence("why?") == "Why?");
    CHECK(page::sentence("").empty());
}

TEST_CASE("units get their signs, names do not") {
    CHECK(page::with_unit_signs("4.2 mohm at 25 degC, 16 mm2") == "4.2 m\u03a9 at 25 \u00b0C, 16 mm\u00b2");
    CHECK(page::with_unit_signs("`mm2` and 3 mm2x") == "`mm2` and 3 mm2x");
}

TEST_CASE("numbers are those of a meter, and what is not there is said") {
    CHECK(page::amperes(-52.08_A) == "-52.1 A");
    CHECK(page::amperes(-1e-12_A) == "0 A");
    CHECK(page::volts(37.7_V) == "37.70 V");
    CHECK(page::volts(std::numeric_limits<double>::quiet_NaN() * si::volt) == "unknown");
    CHECK(page::watts(1914.0 * si::watt) == "1.91 kW");
    CHECK(page::watts(0.0232 * si::watt) == "0.02 W");
    CHECK(page::milliohms(0.372_mohm) == "0.372 m\u03a9");
    CHECK(page::seconds(0.0337 * si::second) == "34 ms");
    CHECK(page::seconds(0.1531 * si::second) == "0.15 s");
    CHECK(page::seconds(90.0 * si::second) == "1 min 30 s");
}

TEST_CASE("a list reads as one says it") {
    CHECK(page::all_of({}).empty());
    CHECK(page::all_of({"A"}) == "A");
    CHECK(page::all_of({"A", "B", "C"}) == "A, B and C");
}
