#include "bankwright/reports/assumption_words.hpp"
#include "bankwright/units/literals.hpp"

#include <algorithm>
#include <string_view>

#include <doctest/doctest.h>

using namespace bankwright;
using namespace bankwright::literals;

namespace {

Bank two_batteries() {
    Bank bank;
    for (auto const* id : {"A", "B"}) {
        Battery b;
        b.id = id;
        b.chemistry = Chemistry::agm;
        b.voltage = 12_V;
        b.capacity = 100_Ah;
        bank.batteries.push_back(b);
    }
    return bank;
}

bool says(std::vector<std::string> const& all, std::string_view part) {
    return std::any_of(all.begin(), all.end(), [&](auto const& one) { return one.find(part) != std::string::npos; });
}

} // namespace

TEST_CASE("what a label leaves open is said once for all of which it is so, and no more once it is stated") {
    auto bank = two_batteries();
    auto said = assumptions(bank, Asked::run);
    CHECK(says(said, "resistance of `A` and `B` by chemistry and capacity, within 40 %"));
    CHECK(says(said, "Peukert exponent of `A` and `B` 1.10 by chemistry"));
    CHECK(says(said, "`A` and `B` full"));
    CHECK_FALSE(says(assumptions(bank, Asked::currents), "Peukert"));
    for (auto& battery : bank.batteries) {
        battery.resistance = 4_mohm;
        battery.reserve = 180_min;
        battery.charge = StateOfCharge::of(1.0);
        battery.health = Health::of(1.0);
    }
    CHECK(assumptions(bank, Asked::run).empty());
    CHECK(assumed_line(assumptions(bank, Asked::run)).empty());
}

TEST_CASE("the law of the propeller is named where a motor runs at part throttle, and only there") {
    auto bank = two_batteries();
    Motor motor;
    motor.id = "M";
    bank.motors = {motor};
    CHECK_FALSE(says(assumptions(bank, Asked::run), "propeller"));
    CHECK(says(assumptions(bank, Asked::run, true), "propeller"));
    bank.motors[0].throttle = Throttle::of(0.5);
    CHECK(says(assumptions(bank, Asked::run), "propeller"));
}
