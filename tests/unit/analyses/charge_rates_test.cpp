#include "bankwright/analyses/in_time/charge_rates.hpp"
#include "bankwright/devices/battery_acceptance.hpp"
#include "bankwright/devices/battery_recovery.hpp"
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
    auto const kept = amperes > 0.0 ? 1.0
                                    : (charging ? share_stored(battery, StateOfCharge::of(charge), ambient) : 1.0) *
                                          coulombic_efficiency(*battery.chemistry).value();
    return -amperes * kept / usable_capacity(battery, 0_A, ambient).value();
}

double lag_rate(Bank const& bank, std::size_t b, double amperes, double lag) {
    auto const law = discharge_law(bank.batteries[b], bank.system.ambient);
    return (amperes > 0.0 ? lag_growth(law, amperes * si::ampere) : 0.0) - recovery_rate * lag;
}

} // namespace

TEST_CASE("charges and lags move as the devices say, however the currents go up and down") {
    auto const bank = bank_of_all_kinds();
    for (bool charging : {false, true}) {
        ChargeRates rates(bank, charging);
        solver::LaneRows amperes(1), charges(1), lags(1), found(1), found_lag(1);
        double worst = 0.0, worst_lag = 0.0;
        for (int i = 0; i < 4000; ++i) {
            for (std::size_t b = 0; b < bank.batteries.size(); ++b) {
                amperes.data()[b] =
                    60.0 * std::sin(0.01 * i * (1.0 + static_cast<double>(b))) + (i % 7 == 0 ? 200.0 : 0.0);
                charges.data()[b] = 0.5 + 0.5 * std::cos(0.003 * i);
                lags.data()[b] = 0.1 + 0.1 * std::cos(0.002 * i);
            }
            rates.at({amperes.data(), charges.data(), lags.data()}, found.data(), found_lag.data());
            for (std::size_t b = 0; b < bank.batteries.size(); ++b) {
                auto const expected = rate(bank, b, amperes.data()[b], charges.data()[b], charging);
                worst = std::max(worst, std::abs(found.data()[b] - expected) / std::max(std::abs(expected), 1e-12));
                auto const lag = lag_rate(bank, b, amperes.data()[b], lags.data()[b]);
                worst_lag = std::max(worst_lag, std::abs(found_lag.data()[b] - lag) / std::max(std::abs(lag), 1e-5));
            }
        }
        CHECK(worst < 1e-14);
        CHECK(worst_lag < 1e-7); // polynomials of the fourth degree over a tenth of the current
    }
}

TEST_CASE("no current moves no charge, and the law begins where the rated current ends") {
    auto const bank = bank_of_all_kinds();
    ChargeRates rates(bank, false);
    solver::LaneRows amperes(1), nothing(1), found(1), lag(1);
    rates.at({amperes.data(), nothing.data(), nothing.data()}, found.data(), lag.data());
    for (std::size_t b = 0; b < bank.batteries.size(); ++b) {
        CHECK(found.data()[b] == 0.0);
        CHECK(lag.data()[b] == 0.0);
    }
    auto const law = discharge_law(bank.batteries[0], bank.system.ambient);
    for (double share : {1.0 - 1e-12, 1.0, 1.0 + 1e-12}) {
        amperes.data()[0] = law.rated_current().value() * share;
        rates.at({amperes.data(), nothing.data(), nothing.data()}, found.data(), lag.data());
        CHECK(lag.data()[0] == doctest::Approx(law.deep * recovery_rate).epsilon(1e-8)); // 20 h are as good as for ever
    }
}

// Where the model keeps what a current takes in charge and lag, its two wells' levels are charge and charge - lag; here
// their closed form for a constant current (Manwell and McGowan 1993 [as public implementations restate it]).
TEST_CASE("at a constant current what is at hand follows the kinetic model's closed form to Peukert's time") {
    auto const bank = bank_of_all_kinds();
    for (std::size_t b = 0; b < bank.batteries.size(); ++b)
        for (double amperes : {6.0, 25.0, 80.0}) {
            auto const law = discharge_law(bank.batteries[b], bank.system.ambient);
            auto const time = peukert_time(law.full, law.rated, law.exponent, amperes * si::ampere).value();
            auto const growth = lag_growth(law, amperes * si::ampere);
            double charge = 1.0, lag = 0.0; // by small steps
            constexpr int steps = 20000;
            for (int i = 0; i < steps; ++i) {
                auto const middle = lag + 0.5 * time / steps * (growth - recovery_rate * lag);
                lag += time / steps * (growth - recovery_rate * middle);
                charge -= amperes * time / steps / law.full.value();
            }
            CHECK(charge - lag == doctest::Approx(-law.deep).epsilon(1e-6).scale(1.0));
            CHECK(time_to_empty(bank.batteries[b], amperes * si::ampere, bank.system.ambient).value() ==
                  doctest::Approx(time).epsilon(1e-9));
        }
}
