#include "bankwright/tables/sae_areas.hpp"
#include "bankwright/units/parse.hpp"
#include "bankwright/units/print.hpp"
#include "bankwright/units/wire_gauge.hpp"

#include <doctest/doctest.h>

using namespace bankwright;

TEST_CASE("an SAE size holds its circular mils, and those that SAE does not have are none") {
    for (auto const& row : tables::sae_areas::least_area)
        CHECK(area(Sae{row.gauge})->value() == doctest::Approx(row.circular_mils * circular_mil));
    for (int const number : {40, 17, 7, 3, -4})
        CHECK_FALSE(area(Sae{number}));
}

TEST_CASE("an SAE size reads, prints, and holds less copper than the gauge of its number") {
    auto const six = parse<WireSize>("6 SAE");
    REQUIRE(six.value);
    CHECK(six.value->is_sae());
    CHECK(print(*six.value) == "6 SAE");
    CHECK(print(*parse<WireSize>("2/0 SAE").value) == "2/0 SAE");
    CHECK(six.value->area() < area(Awg{6}));
    CHECK_FALSE(*six.value == WireSize(Awg{6}));
    CHECK_FALSE(parse<WireSize>("3 SAE").value);
    CHECK_FALSE(parse<WireSize>("7 SAE").value);
}

TEST_CASE("the thinnest gauge of a section holds at least as much") {
    CHECK(thinnest_gauge(16e-6 * si::square_meter) == Awg{5});
    CHECK(thinnest_gauge(area(Awg{6})) == Awg{6});
    CHECK_FALSE(thinnest_gauge(200e-6 * si::square_meter));
}
