#include "bankwright/units/print.hpp"
#include "support/comma_locale.hpp"

#include <cmath>
#include <cstring>
#include <limits>
#include <random>

#include <doctest/doctest.h>

using namespace bankwright;

namespace {

template <class Q>
Q of(double si) {
    return parsing::FromSI<Q>::make(si);
}
template <>
Temperature of<Temperature>(double kelvins) {
    return kelvin_point(kelvins);
}

bool same_bits(double a, double b) { return std::memcmp(&a, &b, sizeof a) == 0; }

template <class Q>
bool survives(double si) {
    auto const back = parse<Q>(print_exact(of<Q>(si)));
    return back.value && same_bits(back.value->value(), of<Q>(si).value());
}

// Any finite double at all, near and far from what a boat has.
template <class Q>
int lost_among_random(int count, bool negative = true) {
    std::mt19937_64 random(20240502);
    int lost = 0;
    for (int i = 0; i < count; ++i) {
        double si = 0.0;
        auto const bits = random();
        if (i % 16 == 0)
            std::memcpy(&si, &bits, sizeof si);
        else
            si = static_cast<double>(bits % 10'000'000) / 1e4 * (i % 4 == 1 ? 0.001 : 1.0);
        if (!(si - si == 0.0)) continue;
        if (!negative) si = std::abs(si);
        if (!survives<Q>(si) && lost++ < 3) MESSAGE(si << " as " << print_exact(of<Q>(si)));
    }
    return lost;
}

} // namespace

TEST_CASE("people read four digits and a prefix") {
    CHECK(print(of<Voltage>(36.0)) == "36 V");
    CHECK(print(of<Voltage>(12.7096)) == "12.71 V");
    CHECK(print(of<Voltage>(0.0199)) == "19.9 mV");
    CHECK(print(of<Voltage>(-0.5)) == "-500 mV");
    CHECK(print(of<Current>(1360.0)) == "1.36 kA");
    CHECK(print(of<Current>(49.8)) == "49.8 A");
    CHECK(print(of<Resistance>(0.0042)) == "4.2 mohm");
    CHECK(print(of<Resistance>(0.00001234)) == "12.34 uohm");
    CHECK(print(of<Resistance>(0.0)) == "0 ohm");
    CHECK(print(of<Power>(1234567.0)) == "1.235 MW");
    CHECK(print(of<Energy>(3.6e6)) == "1 kWh");
    CHECK(print(of<Energy>(850 * 3600.0)) == "850 Wh");
    CHECK(print(of<Energy>(30.0)) == "30 J");
    CHECK(print(of<Charge>(360000.0)) == "100 Ah");
    CHECK(print(of<Length>(0.3048)) == "12 in");
    CHECK(print(of<Length>(5.1816)) == "17 ft");
    CHECK(print(of<Length>(0.0254)) == "1 in");
    CHECK(print(of<Length>(1.6764)) == "5 ft 6 in");
    CHECK(print(of<Length>(0.2667)) == "10.5 in");
    CHECK(print(of<Length>(7.62)) == "25 ft");
    CHECK(print(of<Length>(2.5)) == "2.5 m");
    CHECK(print(of<Length>(0.35)) == "0.35 m");
    CHECK(print(of<Length>(5.69976)) == "5.7 m"); // 17 ft and a tenth: nobody wrote that
    CHECK(print(of<Area>(13.3e-6)) == "13.3 mm2");
    CHECK(print(of<Mass>(30.0)) == "30 kg");
    CHECK(print(of<Mass>(0.25)) == "250 g");
    CHECK(print(of<Force>(250.0)) == "250 N");
    CHECK(print(of<Torque>(10.0)) == "10 N m");
    CHECK(print(of<AngularSpeed>(157.07963267948966)) == "1500 rpm");
    CHECK(print(of<LetThrough>(25000.0)) == "25000 A2 s");
    CHECK(print(of<ResistancePerLength>(0.001296)) == "1.296 mohm/m");
    CHECK(print(of<TemperatureDifference>(12.5)) == "12.5 K");
    CHECK(print(StateOfCharge::percent(90)) == "90 %");
    CHECK(print(StateOfCharge::of(1.0 / 3.0)) == "33.33 %");
}

TEST_CASE("what rounds up to the next prefix is shown there") {
    CHECK(print(of<Current>(999.94)) == "999.9 A");
    CHECK(print(of<Current>(999.96)) == "1 kA");
    CHECK(print(of<Voltage>(0.99996)) == "1 V");
    CHECK(print(of<Length>(0.099999)) == "0.1 m");
    CHECK(print(of<Mass>(0.99999)) == "1 kg");
}

TEST_CASE("numbers far from any boat still print") {
    CHECK(print(of<Current>(3e-13)) == "3e-13 A");
    CHECK(print(of<Current>(3e12)) == "3e+12 A");
    CHECK(print(of<Current>(-0.0)) == "0 A");
    CHECK(print(of<Current>(std::numeric_limits<double>::infinity())) == "inf A");
    CHECK(print(of<Duration>(std::numeric_limits<double>::infinity())) == "inf s");
    CHECK(print(of<Duration>(std::numeric_limits<double>::quiet_NaN())) == "nan s");
    CHECK(print(of<Charge>(std::numeric_limits<double>::max())).find("Ah") != std::string::npos);
}

TEST_CASE("a duration is told in two units at most") {
    CHECK(print(of<Duration>(0.0)) == "0 s");
    CHECK(print(of<Duration>(12.0)) == "12 s");
    CHECK(print(of<Duration>(59.999)) == "1 min");
    CHECK(print(of<Duration>(90.0)) == "1 min 30 s");
    CHECK(print(of<Duration>(3599.9)) == "1 h");
    CHECK(print(of<Duration>(3.0 * 3600 + 12 * 60)) == "3 h 12 min");
    CHECK(print(of<Duration>(99.0 * 3600)) == "99 h");
    CHECK(print(of<Duration>(100.0 * 3600)) == "4 d 4 h");
    CHECK(print(of<Duration>(-90.0)) == "-1 min 30 s");
}

TEST_CASE("a temperature is told in tenths of a degree Celsius") {
    CHECK(print(celsius(25)) == "25 degC");
    CHECK(print(fahrenheit(80)) == "26.7 degC");
    CHECK(print(celsius(-0.01)) == "0 degC");
    CHECK(print(celsius(-40)) == "-40 degC");
}

TEST_CASE("a wire size is told as its author wrote it") {
    for (std::string_view const text :
         {"6 AWG", "30 AWG", "1 AWG", "1/0 AWG", "2/0 AWG", "4/0 AWG", "16 mm2", "2.5 mm2"}) {
        CHECK(print(*parse<WireSize>(text).value) == text);
        CHECK(print_exact(*parse<WireSize>(text).value) == text);
    }
    CHECK(print(Awg{-1}) == "2/0 AWG");
}

TEST_CASE("what a person would write is what print_exact writes") {
    auto const again = [](auto parsed) { return print_exact(*parsed.value); };
    CHECK(again(parse<Voltage>("12.8 V")) == "12.8 V");
    CHECK(again(parse<Current>("3000 A")) == "3000 A");
    CHECK(again(parse<Resistance>("4.2 mohm")) == "4.2 mohm");
    CHECK(again(parse<Charge>("100 Ah")) == "100 Ah");
    CHECK(again(parse<Length>("17 ft")) == "17 ft");
    CHECK(again(parse<Length>("5 in")) == "5 in");
    CHECK(again(parse<Length>("0.35 m")) == "35 cm");
    CHECK(again(parse<Duration>("185 min")) == "185 min");
    CHECK(again(parse<Duration>("3 h")) == "3 h");
    CHECK(again(parse<Temperature>("25 degC")) == "25 degC");
    CHECK(again(parse<Temperature>("20.1 degC")) == "20.1 degC");
    CHECK(again(parse<Temperature>("80 degF")) == "80 degF");
    CHECK(again(parse<Force>("55 lbf")) == "55 lbf");
    CHECK(again(parse<Torque>("10 Nm")) == "10 N m");
    CHECK(again(parse<Throttle>("60 %")) == "60 %");
    CHECK(again(parse<Voltage>("-0 V")) == "-0 V");
}

TEST_CASE("every hundredth up to two hundred of every quantity is read back to the bit") {
    int lost = 0;
    for (int i = 0; i <= 20'000; ++i) {
        double const x = i / 100.0;
        lost += !survives<Voltage>(x) + !survives<Resistance>(x / 1000) + !survives<Charge>(x * 3600) +
                !survives<Length>(x * 0.0254);
        lost += !survives<Area>(x / 1e6) + !survives<StateOfCharge>(x / 100) + !survives<Temperature>(x + 200);
    }
    CHECK(lost == 0);
}

TEST_CASE("a million random doubles over the quantities are read back to the bit") {
    CHECK(lost_among_random<Voltage>(200'000) == 0);
    CHECK(lost_among_random<Resistance>(200'000) == 0);
    CHECK(lost_among_random<Power>(100'000) == 0);
    CHECK(lost_among_random<Area>(100'000) == 0);
    CHECK(lost_among_random<Health>(200'000) == 0);
    CHECK(lost_among_random<LetThrough>(100'000) == 0);
    CHECK(lost_among_random<ResistancePerLength>(20'000) == 0);
    CHECK(lost_among_random<Energy>(10'000) == 0);
    CHECK(lost_among_random<Charge>(10'000) == 0);
    CHECK(lost_among_random<Length>(10'000) == 0);
    CHECK(lost_among_random<Duration>(10'000) == 0);
    CHECK(lost_among_random<Mass>(10'000) == 0);
    CHECK(lost_among_random<Force>(10'000) == 0);
    CHECK(lost_among_random<Torque>(10'000) == 0);
    CHECK(lost_among_random<AngularSpeed>(10'000) == 0);
    CHECK(lost_among_random<Temperature>(20'000, false) == 0);
}

TEST_CASE("the ends of the doubles are read back to the bit") {
    using limits = std::numeric_limits<double>;
    for (double const si :
         {limits::max(), -limits::max(), limits::min(), limits::denorm_min(), 0.0, -0.0, limits::epsilon()}) {
        CHECK(survives<Voltage>(si));
        CHECK(survives<Resistance>(si));
        CHECK(survives<Charge>(si));
        CHECK(survives<Length>(si));
        CHECK(survives<Area>(si));
        CHECK(survives<StateOfCharge>(si));
        if (si >= 0.0) CHECK(survives<Temperature>(si));
    }
}

TEST_CASE("what has no reading prints as something that is refused") {
    CHECK(!parse<Voltage>(print_exact(of<Voltage>(std::numeric_limits<double>::quiet_NaN()))).value);
    CHECK(!parse<Voltage>(print_exact(of<Voltage>(std::numeric_limits<double>::infinity()))).value);
    CHECK(!parse<Temperature>(print_exact(kelvin_point(-1.0))).value);
}

TEST_CASE("a decimal comma in the program's locale changes no text") {
    support::CommaLocale const german;
    CHECK(print(of<Voltage>(12.7096)) == "12.71 V");
    CHECK(print(of<LetThrough>(25000.0)) == "25000 A2 s");
    CHECK(print(celsius(20.5)) == "20.5 degC");
    CHECK(print_exact(of<Resistance>(0.0042)) == "4.2 mohm");
    CHECK(survives<Length>(1.0 / 3.0));
}
