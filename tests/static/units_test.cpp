// What must not compile, and what must: meaning is kept apart by types, not by care.
#include "bankwright/units/literals.hpp"
#include "bankwright/units/parse.hpp"
#include "bankwright/units/print.hpp"

#include <type_traits>

#include <doctest/doctest.h>

using namespace bankwright;
using namespace bankwright::literals;

namespace {

template <class A, class B>
concept Addable = requires(A a, B b) {
    a + b;
};
template <class A, class B>
concept Subtractable = requires(A a, B b) {
    a - b;
};
template <class A, class B>
concept Comparable = requires(A a, B b) {
    a < b;
};
template <class A, class B>
concept Equatable = requires(A a, B b) {
    a == b;
};
template <class A>
concept Negatable = requires(A a) {
    -a;
};
template <class Q>
concept CanParse = requires {
    parse<Q>("");
};
template <class Q>
concept CanPrint = requires(Q q) {
    print(q);
    print_exact(q);
};

// Quantities of one dimension add; of two they do not.
static_assert(Addable<Voltage, Voltage> && Comparable<Voltage, Voltage>);
static_assert(!Addable<Voltage, Current> && !Comparable<Voltage, Current>);
static_assert(!Addable<Charge, Energy> && !Addable<Mass, Force> && !Addable<Length, Area> && !Addable<Torque, Energy>);
static_assert(std::is_convertible_v<decltype(Voltage{} / Resistance{}), Current>);
static_assert(std::is_convertible_v<decltype(Voltage{} * Current{}), Power>);
static_assert(std::is_convertible_v<decltype(Power{} * Duration{}), Energy>);
static_assert(std::is_convertible_v<decltype(Current{} * Duration{}), Charge>);
static_assert(std::is_convertible_v<decltype(ResistancePerLength{} * Length{}), Resistance>);
static_assert(std::is_convertible_v<decltype(Current{} * Current{} * Duration{}), LetThrough>);
static_assert(!std::is_convertible_v<decltype(Voltage{} * Resistance{}), Current>);

// A bare number is never a quantity, nor a quantity a bare number.
static_assert(!std::is_convertible_v<double, Voltage> && !std::is_constructible_v<Voltage, double>);
static_assert(!std::is_convertible_v<int, Voltage> && !std::is_convertible_v<Voltage, double>);
static_assert(!Addable<Voltage, double> && !Comparable<Voltage, double>);
static_assert(!std::is_constructible_v<Temperature, double>);

// A temperature is a point: differences add to it; that points do not is in must_not_compile.
static_assert(Addable<Temperature, TemperatureDifference>);
static_assert(std::is_same_v<decltype(Temperature{} - Temperature{}), TemperatureDifference>);
static_assert(std::is_same_v<decltype(Temperature{} + TemperatureDifference{}), Temperature>);
static_assert(!std::is_convertible_v<Temperature, TemperatureDifference>);
static_assert(!std::is_convertible_v<TemperatureDifference, Temperature>);
static_assert(!Equatable<Temperature, TemperatureDifference>);

// Fractions of different meaning do not mix, and none is a bare number.
static_assert(Equatable<StateOfCharge, StateOfCharge> && Comparable<StateOfCharge, StateOfCharge>);
static_assert(!Addable<StateOfCharge, Health> && !Equatable<StateOfCharge, Health> &&
              !Comparable<StateOfCharge, Health>);
static_assert(!Equatable<Health, Efficiency> && !Comparable<Health, Efficiency> &&
              !Equatable<StateOfCharge, Efficiency>);
static_assert(!std::is_constructible_v<Efficiency, Health> && !std::is_constructible_v<StateOfCharge, Efficiency>);
static_assert(!std::is_convertible_v<Efficiency, Throttle> && !std::is_convertible_v<StateOfCharge, Throttle>);
static_assert(!std::is_convertible_v<Charge, StateOfCharge> && !std::is_convertible_v<StateOfCharge, Charge> &&
              !Equatable<Charge, StateOfCharge>);
static_assert(!std::is_convertible_v<StateOfCharge, DepthOfDischarge>);
static_assert(!std::is_constructible_v<StateOfCharge, Health>);
static_assert(!std::is_convertible_v<double, StateOfCharge> && !std::is_constructible_v<StateOfCharge, double>);
static_assert(!std::is_convertible_v<StateOfCharge, double>);
static_assert(!Addable<StateOfCharge, StateOfCharge>);

// A wire size comes from a gauge or an area, never from a number or a length.
static_assert(std::is_convertible_v<Awg, WireSize> && std::is_convertible_v<Area, WireSize>);
static_assert(!std::is_convertible_v<double, WireSize> && !std::is_constructible_v<WireSize, double>);
static_assert(!std::is_constructible_v<WireSize, int> && !std::is_convertible_v<Length, WireSize>);
static_assert(!std::is_convertible_v<int, Awg> && !Comparable<WireSize, WireSize> && !Comparable<Awg, Awg>);

// Only quantities are read and printed.
static_assert(CanParse<Voltage> && CanParse<Temperature> && CanParse<TemperatureDifference> && CanParse<WireSize>);
static_assert(CanParse<StateOfCharge> && CanParse<Throttle> && CanParse<LetThrough> && CanParse<ResistancePerLength>);
static_assert(!CanParse<double> && !CanParse<int> && !CanParse<Awg> && !CanParse<std::string>);
static_assert(CanPrint<Voltage> && CanPrint<Temperature> && CanPrint<WireSize> && CanPrint<Health>);
static_assert(!CanPrint<double> && !CanPrint<std::string>);

// Literals are constants of the right type; a percentage takes any meaning.
static_assert(std::is_same_v<decltype(12.8_V), Voltage> && std::is_same_v<decltype(100_Ah), Charge>);
static_assert(std::is_same_v<decltype(10_K), TemperatureDifference> && std::is_same_v<decltype(25_degC), Temperature>);
static_assert((12.8_V).value() == 12.8 && (100_Ah).value() == 360000.0 && (4.2_mohm).value() == 0.0042);
static_assert(std::is_convertible_v<decltype(98_pct), StateOfCharge> &&
              std::is_convertible_v<decltype(98_pct), Health>);
static_assert(!std::is_convertible_v<decltype(98_pct), double>);
static_assert(StateOfCharge(98_pct) == StateOfCharge::percent(98));
static_assert(6_AWG == Awg{6} && 0_AWG == Awg{0} && 00_AWG == Awg{-1} && 0000_AWG == Awg{-3});

template <class Q>
bool as_written(Q literal, std::string_view text) {
    auto const parsed = parse<Q>(text);
    return parsed.value && *parsed.value == literal;
}

} // namespace

TEST_CASE("a literal is the double that parse reads from the same text") {
    CHECK(as_written(12.8_V, "12.8 V"));
    CHECK(as_written(150_mV, "150 mV"));
    CHECK(as_written(1.36_kA, "1.36 kA"));
    CHECK(as_written(4.2_mohm, "4.2 mohm"));
    CHECK(as_written(0.1_mohm, "0.1 mohm"));
    CHECK(as_written(12.3_uohm, "12.3 uohm"));
    CHECK(as_written(600_W, "600 W"));
    CHECK(as_written(1.2_kWh, "1.2 kWh"));
    CHECK(as_written(105.5_Ah, "105.5 Ah"));
    CHECK(as_written(14_in, "14 in"));
    CHECK(as_written(17_ft, "17 ft"));
    CHECK(as_written(0.3_mm, "0.3 mm"));
    CHECK(as_written(16_mm2, "16 mm2"));
    CHECK(as_written(185_min, "185 min"));
    CHECK(as_written(30.7_lb, "30.7 lb"));
    CHECK(as_written(55_lbf, "55 lbf"));
    CHECK(as_written(25_degC, "25 degC"));
    CHECK(as_written(77_degF, "77 degF"));
    CHECK(as_written(StateOfCharge(98_pct), "98 %"));
    CHECK(as_written(WireSize(6_AWG), "6 AWG"));
    CHECK(as_written(WireSize(00_AWG), "2/0 AWG"));
    CHECK(as_written(WireSize(2.5_mm2), "2.5 mm2"));
}
