#include "bankwright/units/dimensions.hpp"

#include <string>

#include <doctest/doctest.h>

using namespace bankwright;

TEST_SUITE_BEGIN("units/dimensions");

TEST_CASE("length, width and height, with one unit or three") {
    auto const read = parse_dimensions("330 x 173 x 240 mm");
    REQUIRE(read.value);
    CHECK(read.value->length.value() == doctest::Approx(0.330));
    CHECK(read.value->width.value() == doctest::Approx(0.173));
    CHECK(read.value->height.value() == doctest::Approx(0.240));
    CHECK(parse_dimensions("330mm x 17.3 cm x 0.24 m").value == read.value);
    CHECK(parse_dimensions("330\u00D7173\u00D7240 mm").value == read.value);
    CHECK(parse_dimensions("13 x 6.8 x 9.4 in").value->length.value() == doctest::Approx(13 * 0.0254)); // by definition
    CHECK(print(*read.value) == "330 x 173 x 240 mm");
}

TEST_CASE("written exactly they read back the same") {
    for (auto const* text : {"330 x 173 x 240 mm", "13 x 6.8 x 9.4 in", "12.7 x 1 x 0.1 mm"}) {
        CAPTURE(text);
        CHECK(print_exact(*parse_dimensions(text).value) == std::string(text));
    }
    auto const mixed = parse_dimensions("1 ft x 300 mm x 0.1234567890123 m");
    REQUIRE(mixed.value);
    CHECK(parse_dimensions(print_exact(*mixed.value)).value == mixed.value);
}

TEST_CASE("what is no size of a box is refused in words") {
    for (auto const* text : {"", "330 mm", "330 x 173 mm", "1 x 2 x 3 x 4 mm", "330 x 173 x 240", "a x b x c mm",
                             "0 x 1 x 1 mm", "-1 x 1 x 1 mm", "11 x 1 x 1 m", "1 kg x 1 x 1 mm", "x x mm"}) {
        CAPTURE(text);
        auto const read = parse_dimensions(text);
        CHECK_FALSE(read.value);
        CHECK(read.problem.find("330 x 173 x 240 mm") != std::string::npos);
    }
    CHECK(parse_dimensions("330 x 173 x 240").unit_is_wrong);
}

TEST_SUITE_END();
