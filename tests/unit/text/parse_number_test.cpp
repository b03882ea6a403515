#include "bankwright/text/parse_number.hpp"
#include "support/comma_locale.hpp"

#include <cstdint>
#include <cstdlib>
#include <cstring>
#include <limits>
#include <random>
#include <string>
#include <vector>

#include <doctest/doctest.h>

using namespace bankwright;

namespace {

std::optional<double> number(std::string_view text) { return parse_number(text); }

bool same_bits(double a, double b) { return std::memcmp(&a, &b, sizeof a) == 0; }

} // namespace

TEST_CASE("a number is read as the compiler reads it") {
    CHECK(number("0") == 0.0);
    CHECK(number("12.8") == 12.8);
    CHECK(number("+12.8") == 12.8);
    CHECK(number("-4.2e-3") == -4.2e-3);
    CHECK(number("1E3") == 1000.0);
    CHECK(number(".5") == 0.5);
    CHECK(number("5.") == 5.0);
    CHECK(number("007") == 7.0);
    CHECK(number("123456789012345678901234567890") == 123456789012345678901234567890.0);
    CHECK(number("1.7976931348623157e308") == std::numeric_limits<double>::max());
    CHECK(number("4.9406564584124654e-324") == std::numeric_limits<double>::denorm_min());
    CHECK(number("2.2250738585072014e-308") == std::numeric_limits<double>::min());
    CHECK(same_bits(*number("-0"), -0.0));
    CHECK(same_bits(*number("-1e-400"), -0.0));
}

TEST_CASE("what follows a number stays") {
    std::string_view text = "4.2 mohm";
    CHECK(parse_number(text) == 4.2);
    CHECK(text == " mohm");
    text = "5e V";
    CHECK(parse_number(text) == 5.0);
    CHECK(text == "e V");
    text = "1.2.3";
    CHECK(parse_number(text) == 1.2);
    CHECK(text == ".3");
    text = "12,8";
    CHECK(parse_number(text) == 12.0);
    CHECK(text == ",8");
}

TEST_CASE("what is no number is left alone") {
    for (std::string_view const text : {"", " 1", "V", "-", "+", ".", "-.", "e5", "nan", "inf", "-inf", "--1", "1e999",
                                        "-1e309", "1.7976931348623159e308", "99999999999e99999999999999999999"}) {
        auto rest = text;
        CHECK_MESSAGE(!parse_number(rest), text);
        CHECK(rest == text);
    }
}

TEST_CASE("a number halfway between two doubles goes to the even one, and just beside it to its side") {
    CHECK(number("9007199254740993") == 9007199254740992.0); // 2^53 + 1
    CHECK(number("9007199254740993.00000000000000000000000000000000000001") == 9007199254740994.0);
    CHECK(number("9007199254740995") == 9007199254740996.0);
    auto const beyond_all_digits = "9007199254740993." + std::string(2000, '0') + "1";
    CHECK(number(beyond_all_digits) == 9007199254740994.0);
    CHECK(number("2.4703282292062327208e-324") == 0.0); // below half of the smallest double
    CHECK(number("2.4703282292062328e-324") == std::numeric_limits<double>::denorm_min());
}

TEST_CASE("a hundred thousand random numbers are read as the C library reads them in the C locale") {
    std::mt19937_64 random(20240501);
    int wrong = 0;
    for (int i = 0; i < 100'000; ++i) {
        char text[80];
        if (i % 2 == 0) {
            auto const bits = random();
            double value = 0.0;
            std::memcpy(&value, &bits, sizeof value);
            if (!(value - value == 0.0)) continue;
            std::snprintf(text, sizeof text, "%.*g", static_cast<int>(random() % 20) + 1, value);
        } else {
            std::snprintf(text, sizeof text, "%llu.%llue%d", static_cast<unsigned long long>(random() % 100000),
                          static_cast<unsigned long long>(random() >> (random() % 64)),
                          static_cast<int>(random() % 700) - 350);
        }
        double const expected = std::strtod(text, nullptr);
        auto const read = number(text);
        bool const right = expected - expected == 0.0 ? read && same_bits(*read, expected) : !read;
        if (!right && wrong++ < 5) MESSAGE(text);
    }
    CHECK(wrong == 0);
}

TEST_CASE("a million digits take no time to speak of and are read right") {
    CHECK(number(std::string(1'000'000, '0') + "7") == 7.0);
    CHECK(number("0." + std::string(1'000'000, '3')) == 1.0 / 3.0);
    CHECK(!number(std::string(1'000'000, '9')));
    CHECK(number("1" + std::string(1'000'000, '0') + "e-1000000") == 1.0);
}

TEST_CASE("a comma as the C++ locale's decimal point changes nothing") {
    support::CommaLocale const german;
    CHECK(number("12.8") == 12.8);
    CHECK(number("0.30000000000000000000001") == 0.3);
    CHECK(number("1234567.5") == 1234567.5);
}

TEST_CASE("a comma as the C locale's decimal point changes nothing") {
    support::CommaLocale const german;
    if (!german.c_has_comma()) {
        MESSAGE("skipped: the machine neither has a locale with a decimal comma nor can make one");
        return;
    }
    CHECK(std::strtod("12.8", nullptr) == 12.0); // the locale is at work
    CHECK(number("12.8") == 12.8);
    CHECK(number("0.30000000000000000000001") == 0.3);
}

TEST_CASE("a factor is applied before the one rounding") {
    auto const scaled = [](std::string_view text, std::uint64_t factor, int power) {
        return nearest_double(*read_decimal(text), factor, power);
    };
    CHECK(scaled("4.2", 1, -3) == 0.0042);
    CHECK(scaled("12", 254, -4) == 0.3048);
    CHECK(scaled("1", 44482216152605, -13) == 4.4482216152605);
    CHECK(scaled("0", 44482216152605, -13) == 0.0);
    CHECK(scaled("1", 18446744073709551615u, 0) == 18446744073709551615.0);
    CHECK(!scaled("1e308", 36, 2));
    CHECK(scaled("1e-320", 10471975511965977462u, -20) == 1.0471975511965977e-321);
}
