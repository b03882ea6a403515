#include "bankwright/analyses/in_time/charge_rates.hpp"
#include "bankwright/devices/battery_acceptance.hpp"
#include "bankwright/units/literals.hpp"

#include <algorithm>
#include <cmath>

#include <doctest/doctest.h>

using namespace bankwright;
using namespace bankwright::literals;

namespace {

Bank bank_of_all_kinds() {
    Bank bank;
    for (auto const chemistry : {Chemistry::flooded, Chemistry::gel, Chemistry::agm, Chemistry::lifepo4}) {
        Battery b;
        b.id = std::string(1, static_cast<char>('A' + bank.batteries.size()));
        b.chemistry = chemistry;
        b.voltage = is_lithium(chemistry) ? 12.8_V : 12_V;
        b.capacity = 100_Ah;
        b.health = Health::of(0.9);
        bank.batteries.push_back(b);
    }
    bank.batteries[2].reserve = 170_min;
    bank.system.ambient = 15_degC;
    return bank;
}

// As the devices have it, one battery and one current at a time.
double rate(Bank const& bank, std::size_t b, double amperes, double charge, bool charging) {
    auto const& battery = bank.batteries[b];
    auto const ambient = bank.system.ambient;
    if (amperes > 0.0) return -amperes / usable_capacity(battery, amperes * si::ampere, ambient).value();
    auto const kept = charging ? share_stored(battery, StateOfCharge::of(charge)) : 1.0;
    return -amperes * kept * coulombic_efficiency(*battery.chemistry).value() /
           usable_capacity(battery, 0_A, ambient).value();
}

} // namespace

TEST_CASE("charges move as usable capacity and coulombic efficiency say, however the currents go up and down") {
    auto const bank = bank_of_all_kinds();
    for (bool charging : {false, true}) {
        ChargeRates rates(bank, charging);
        solver::LaneRows amperes(1), charges(1), found(1);
        double worst = 0.0;
        for (int i = 0; i < 4000; ++i) {
            for (std::size_t b = 0; b < bank.batteries.size(); ++b) {
                amperes.data()[b] =
                    60.0 * std::sin(0.01 * i * (1.0 + static_cast<double>(b))) + (i % 7 == 0 ? 200.0 : 0.0);
                charges.data()[b] = 0.5 + 0.5 * std::cos(0.003 * i);
            }
            rates.at(amperes.data(), charges.data(), found.data());
            for (std::size_t b = 0; b < bank.batteries.size(); ++b) {
                auto const expected = rate(bank, b, amperes.data()[b], charges.data()[b], charging);
                worst = std::max(worst, std::abs(found.data()[b] - expected) / std::max(std::abs(expected), 1e-12));
            }
        }
        CHECK(worst < 1e-14);
    }
}

TEST_CASE("no current moves no charge, and the law begins where the rated current ends") {
    auto const bank = bank_of_all_kinds();
    ChargeRates rates(bank, false);
    solver::LaneRows amperes(1), charges(1), found(1);
    rates.at(amperes.data(), charges.data(), found.data());
    for (std::size_t b = 0; b < bank.batteries.size(); ++b)
        CHECK(found.data()[b] == 0.0);
    auto const law = discharge_law(bank.batteries[0], bank.system.ambient);
    for (double share : {1.0 - 1e-12, 1.0, 1.0 + 1e-12}) {
        amperes.data()[0] = law.rated_current().value() * share;
        rates.at(amperes.data(), charges.data(), found.data());
        CHECK(found.data()[0] == doctest::Approx(-1.0 / law.rated.value()).epsilon(1e-11));
    }
}
