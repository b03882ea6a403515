#include "bankwright/units/parse.hpp"
#include "support/comma_locale.hpp"

#include <string>

#include <doctest/doctest.h>

using namespace bankwright;

namespace {

template <class Q>
double value(std::string_view text) {
    auto const parsed = parse<Q>(text);
    REQUIRE_MESSAGE(parsed.value, parsed.problem);
    CHECK(parsed.problem.empty());
    CHECK(!parsed.unit_is_wrong);
    return parsed.value->value();
}

template <class Q>
std::string bad_unit(std::string_view text) {
    auto const parsed = parse<Q>(text);
    CHECK(!parsed.value);
    CHECK(parsed.unit_is_wrong);
    return parsed.problem;
}

template <class Q>
std::string bad_value(std::string_view text) {
    auto const parsed = parse<Q>(text);
    CHECK(!parsed.value);
    CHECK(!parsed.unit_is_wrong);
    return parsed.problem;
}

} // namespace

TEST_CASE("each quantity is read in the units that the trade writes") {
    CHECK(value<Voltage>("36 V") == 36.0);
    CHECK(value<Voltage>("150 mV") == 0.15);
    CHECK(value<Current>("1.36 kA") == 1360.0);
    CHECK(value<Resistance>("4.2 mohm") == 0.0042);
    CHECK(value<Power>("600 W") == 600.0);
    CHECK(value<Energy>("1.2 kWh") == 1.2 * 3.6e6);
    CHECK(value<Charge>("100 Ah") == 360000.0);
    CHECK(value<Charge>("2200 mAh") == 7920.0);
    CHECK(value<Length>("12 in") == 0.3048);
    CHECK(value<Length>("17 ft") == 5.1816);
    CHECK(value<Length>("25.4 mm") == 0.0254);
    CHECK(value<Area>("16 mm2") == 16e-6);
    CHECK(value<Duration>("185 min") == 11100.0);
    CHECK(value<Mass>("1 lb") == 0.45359237);
    CHECK(value<Mass>("16 oz") == 0.45359237);
    CHECK(value<Force>("1 lbf") == 4.4482216152605);
    CHECK(value<Force>("1 lb") == 4.4482216152605); // of a thrust, as its label has it
    CHECK(value<Torque>("10 N m") == 10.0);
    CHECK(value<Torque>("10 Nm") == 10.0);
    CHECK(value<LetThrough>("25000 A2 s") == 25000.0);
    CHECK(value<ResistancePerLength>("1.296 ohm/km") == 0.001296);
    CHECK(value<ResistancePerLength>("1.296 mohm/m") == 0.001296);
    CHECK(value<StateOfCharge>("98 %") == 0.98);
    CHECK(value<TemperatureDifference>("10 K") == 10.0);
}

TEST_CASE("a temperature is read on three scales") {
    CHECK(value<Temperature>("25 degC") == 298.15);
    CHECK(value<Temperature>("77 degF") == 298.15);
    CHECK(value<Temperature>("298.15 K") == 298.15);
    CHECK(value<Temperature>("-40 degC") == doctest::Approx(value<Temperature>("-40 degF")).epsilon(1e-15));
    CHECK(value<Temperature>("25\u00B0C") == 298.15);
    CHECK(value<Temperature>("77 \u00B0F") == 298.15);
    CHECK(value<Temperature>("0 K") == 0.0);
    CHECK(bad_value<Temperature>("-300 degC") ==
          "`-300 degC` is below absolute zero; expected a temperature such as \"25 degC\"");
}

TEST_CASE("micro and ohm are read in each of their Unicode spellings") {
    for (std::string_view const text :
         {"4200 u\u03A9", "4200 \u00B5\u2126", "4200 \u03BCohm", "4.2 m\u03A9", "4.2 m\u2126", "4200 uohm"})
        CHECK(value<Resistance>(text) == 0.0042);
    CHECK(value<Area>("16 mm\u00B2") == 16e-6);
}

TEST_CASE("blanks are free around the number, no-break and thin ones too") {
    for (std::string_view const text :
         {"12.8V", "12.8 V", "12.8   V", " 12.8 V ", "\t12.8\tV", "12.8\u00A0V", "12.8\u202FV", "12.8\u2009V"})
        CHECK(value<Voltage>(text) == 12.8);
}

TEST_CASE("feet with inches and hours with minutes add up exactly") {
    CHECK(value<Length>("5 ft 6 in") == 1.6764);
    CHECK(value<Length>("5ft 6in") == 1.6764);
    CHECK(value<Duration>("1 h 30 min") == 5400.0);
    CHECK(value<Duration>("1 d 2 h 3 min 4 s") == 93784.0);
    CHECK(value<Length>("-5 ft") == -1.524);
    CHECK(bad_value<Length>("6 in 5 ft").find("larger first") != std::string::npos);
    CHECK(bad_value<Length>("5 ft 6 ft").find("larger first") != std::string::npos);
    CHECK(bad_value<Length>("1 m 6 in").find("do not divide") != std::string::npos);
    CHECK(bad_value<Length>("-5 ft 6 in").find("minus") != std::string::npos);
    bad_unit<Length>("5 ft 6");
    bad_unit<Length>("5 ft 6 V");
    bad_unit<Length>("5 ft in");
    bad_unit<Voltage>("5 V 6 mV");
    bad_unit<Duration>("1 h 30 m");
}

TEST_CASE("a wire is a gauge from 4/0 to 30 or a cross-section") {
    auto const size = [](std::string_view text) { return parse<WireSize>(text).value.value(); };
    CHECK(size("6 AWG") == WireSize(Awg{6}));
    CHECK(size("30AWG") == WireSize(Awg{30}));
    CHECK(size("1/0 AWG") == WireSize(Awg{0}));
    CHECK(size("0 AWG") == WireSize(Awg{0}));
    CHECK(size("2/0 AWG") == WireSize(Awg{-1}));
    CHECK(size("00 AWG") == WireSize(Awg{-1}));
    CHECK(size("4/0 AWG") == WireSize(Awg{-3}));
    CHECK(size("0000 AWG") == WireSize(Awg{-3}));
    CHECK(size("16 mm2") == WireSize(Area::from_value(16e-6)));
    CHECK(size("16 mm\u00B2") == size("16mm2"));
    CHECK(size("250 kcmil").area().value() ==
          doctest::Approx(126.7e-6).epsilon(1e-3)); // from memory: 250 kcmil = 127 mm2
    for (std::string_view const text :
         {"31 AWG", "5/0 AWG", "0/0 AWG", "00000 AWG", "06 AWG", "6.5 AWG", "-6 AWG", "2/1 AWG", "6/ AWG",
          "99999999999999999999 AWG", "AWG 6", "AWG", "", "0 mm2", "-16 mm2", "16,5 mm2"})
        CHECK_MESSAGE(!bad_value<WireSize>(text).empty(), text);
    for (std::string_view const text : {"6", "2/0", "6 awg", "6 ga", "16 mm", "16 sqmm", "250 MCM", "6 V"})
        CHECK_MESSAGE(!bad_unit<WireSize>(text).empty(), text);
    CHECK(bad_unit<WireSize>("6") == "`6` has no unit; expected a wire size such as \"6 AWG\" or \"16 mm2\"");
}

TEST_CASE("a missing unit is never guessed") {
    CHECK(bad_unit<Voltage>("36") == "`36` has no unit; expected a voltage such as \"36 V\"");
    CHECK(bad_unit<StateOfCharge>("0.9") == "`0.9` has no unit; expected a percentage such as \"90 %\"");
    bad_unit<Temperature>("25");
    bad_unit<Duration>("3");
}

TEST_CASE("the unit of another quantity is named as such") {
    CHECK(bad_unit<Voltage>("36 A") == "`36 A` is a current; expected a voltage such as \"36 V\"");
    CHECK(bad_unit<Charge>("100 A") == "`100 A` is a current; expected a charge such as \"100 Ah\"");
    CHECK(bad_unit<Area>("6 AWG").find("is a wire gauge") != std::string::npos);
    CHECK(bad_unit<Length>("5 mm2").find("is a cross-section") != std::string::npos);
    CHECK(bad_unit<Force>("55 kg").find("is a mass") != std::string::npos);
    CHECK(bad_unit<Torque>("10 J").find("is an energy") != std::string::npos);
    CHECK(bad_unit<TemperatureDifference>("10 degC").find("is a temperature;") != std::string::npos);
}

TEST_CASE("a near miss gets its unit offered") {
    auto const offers = [](std::string const& problem, std::string const& unit) {
        return problem.find("(did you mean `" + unit + "`?)") != std::string::npos;
    };
    CHECK(bad_unit<Voltage>("36 v") ==
          "`36 v` has the unknown unit `v` (did you mean `V`?); expected a voltage such as \"36 V\"");
    CHECK(offers(bad_unit<Voltage>("36 volts"), "V"));
    CHECK(offers(bad_unit<Voltage>("36 VDC"), "V"));
    CHECK(offers(bad_unit<Charge>("100 AH"), "Ah"));
    CHECK(offers(bad_unit<Charge>("100 amp hours"), "Ah"));
    CHECK(offers(bad_unit<Resistance>("4 mOhm"), "mohm"));
    CHECK(offers(bad_unit<Resistance>("4 ohms"), "ohm"));
    CHECK(offers(bad_unit<Length>("12\""), "in"));
    CHECK(offers(bad_unit<Length>("17 feet"), "ft"));
    CHECK(offers(bad_unit<Area>("16 mm^2"), "mm2"));
    CHECK(offers(bad_unit<Duration>("3 hrs"), "h"));
    CHECK(offers(bad_unit<Temperature>("25 C"), "degC"));
    CHECK(offers(bad_unit<Temperature>("77 F"), "degF"));
    CHECK(offers(bad_unit<WireSize>("250 MCM"), "kcmil"));
    CHECK(offers(bad_unit<WireSize>("6 awg"), "AWG"));
    CHECK(offers(bad_unit<Health>("90 percent"), "%"));
    CHECK(bad_unit<Voltage>("36 xyz").find("did you mean") == std::string::npos);
}

TEST_CASE("upper and lower case of a prefix matter") {
    CHECK(value<Voltage>("4 mV") == 0.004);
    CHECK(value<Voltage>("4 MV") == 4e6);
    bad_unit<Current>("4 KA");
}

TEST_CASE("what is no decimal number is refused and said why") {
    CHECK(bad_value<Voltage>("") == "the value is empty; expected a voltage such as \"36 V\"");
    CHECK(bad_value<Voltage>("12,8 V").find("has a comma in its number") != std::string::npos);
    CHECK(bad_value<Current>("3,000 A").find("has a comma in its number") != std::string::npos);
    CHECK(bad_value<Voltage>("0x10 V").find("not a decimal number") != std::string::npos);
    CHECK(bad_value<Voltage>("1e999 V").find("too large") != std::string::npos);
    CHECK(bad_value<Energy>("1e308 kWh").find("too large") != std::string::npos);
    for (std::string_view const text :
         {"V", "nan V", "inf V", "- 5 V", "--5 V", "1_000 V", "1.2.3 V", "1 2 V", "\"36 V\"", "=36 V", "~36 V"})
        CHECK_MESSAGE(!bad_value<Voltage>(text).empty(), text);
    for (std::string_view const text : {"36 V V", "36 V;", "36 VA", "36 m V", "36 V\n", "1e V"})
        CHECK_MESSAGE(!bad_unit<Voltage>(text).empty(), text);
}

TEST_CASE("a problem shows foreign text safely and not at length") {
    auto const problem = bad_unit<Voltage>("36 V\x1b[2J\u202E\xFF");
    CHECK(problem.find('\x1b') == std::string::npos);
    CHECK(problem.find("\\x1b[2J\\u{202e}\\xff") != std::string::npos);
    CHECK(bad_unit<Voltage>("36 " + std::string(1'000'000, 'V')).size() < 300);
    CHECK(bad_value<Voltage>(std::string(1'000'000, '9') + " V").size() < 300);
    CHECK(bad_unit<Length>("1 ft " + std::string(100'000, '1')).size() < 300);
}

TEST_CASE("a decimal comma in the program's locale changes no reading") {
    support::CommaLocale const german;
    CHECK(value<Voltage>("12.8 V") == 12.8);
    CHECK(value<Temperature>("20.5 degC") == 293.65);
    bad_value<Voltage>("12,8 V");
}
