#include "bankwright/units/wire_gauge.hpp"

#include <cmath>

#include <doctest/doctest.h>

using namespace bankwright;

namespace {

// Kuphaldt, Lessons in Electric Circuits, vol. V, ch. 3 (gauge table) [read]: diameter and circular mils as printed.
struct PrintedGauge {
    int number;
    double inches;
    double circular_mils;
    double last_printed_mils; // worth of the last digit printed
};
constexpr PrintedGauge printed[] = {
    {18, 0.0403, 1624, 1},     {16, 0.0508, 2583, 1},     {14, 0.0641, 4107, 1},     {12, 0.0808, 6530, 1},
    {10, 0.1019, 10380, 10},   {8, 0.1285, 16510, 10},    {6, 0.1620, 26250, 10},    {4, 0.2043, 41740, 10},
    {3, 0.2294, 52630, 10},    {2, 0.2576, 66370, 10},    {1, 0.2893, 83690, 10},    {0, 0.3249, 105500, 100},
    {-1, 0.3648, 133100, 100}, {-2, 0.4096, 167800, 100}, {-3, 0.4600, 211600, 100},
};

} // namespace

TEST_CASE("gauge diameters are those of the printed table, to its last digit") {
    for (auto const& row : printed) {
        CAPTURE(row.number);
        double const inches = diameter(Awg{row.number}).value() / 0.0254;
        CHECK(std::abs(inches - row.inches) <= 0.00005 + 1e-9);
    }
}

TEST_CASE("gauge areas are those of the printed table, to its last digit") {
    for (auto const& row : printed) {
        CAPTURE(row.number);
        double const mils = diameter(Awg{row.number}).value() / 25.4e-6;
        CHECK(std::abs(mils * mils - row.circular_mils) <= row.last_printed_mils);
    }
}

TEST_CASE("36 AWG is 5 mils and 4/0 AWG 460 mils by definition") {
    // ASTM B258 (from memory): the two anchors of the scale
    CHECK(diameter(Awg{36}).value() == doctest::Approx(0.0050 * 0.0254).epsilon(1e-15));
    CHECK(diameter(Awg{-3}).value() == doctest::Approx(0.4600 * 0.0254).epsilon(1e-14));
}

TEST_CASE("a wire size remembers how it was written") {
    CHECK(WireSize(Awg{6}).gauge() == Awg{6});
    CHECK(WireSize(Awg{6}).area() == area(Awg{6}));
    CHECK(!WireSize(area(Awg{6})).gauge());
    CHECK(!(WireSize(Awg{6}) == WireSize(area(Awg{6}))));
}
