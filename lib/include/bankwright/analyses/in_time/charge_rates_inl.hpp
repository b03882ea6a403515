#pragma once

#include "bankwright/analyses/in_time/charge_rates.hpp"
#include "bankwright/devices/battery_acceptance.hpp"
#include "bankwright/devices/battery_recovery.hpp"
#include "bankwright/numeric/piecewise_polynomial.hpp"

#include <cmath>
#include <limits>

namespace bankwright {

BANKWRIGHT_INLINE ChargeRates::ChargeRates(Bank const& bank, bool charging)
    : bank_(bank), charging_(charging), lanes_(bank.batteries.size()) {
    for (auto const& battery : bank.batteries) {
        laws_.push_back(discharge_law(battery, bank.system.ambient));
        given_.push_back(-1.0 / laws_.back().full.value());
        kept_.push_back(coulombic_efficiency(*battery.chemistry).value() * given_.back());
    }
}

BANKWRIGHT_INLINE ChargeRates::Lanes::Piece ChargeRates::piece_at(std::size_t battery, double amperes) const {
    constexpr double infinite = std::numeric_limits<double>::infinity();
    constexpr double apart = 0.1;
    auto const& law = laws_[battery];
    auto const growth = [&](double at) { return lag_growth(law, at * si::ampere); };
    if (!(amperes >= 0.0)) return {-infinite, 0.0, 0.0, {}};
    auto const rated = law.rated_current().value();
    if (amperes < rated) return {0.0, rated, 0.0, {0.0, growth(rated) / rated}};
    // Always the same pieces, so that a rate is a function of the current alone.
    auto const at = [&](double number) { return rated * std::exp(apart * number); };
    auto number = std::floor(std::log(amperes / rated) / apart);
    if (amperes >= at(number + 1.0)) number += 1.0;
    if (amperes < at(number) && number > 0.0) number -= 1.0;
    return numeric::polynomial_through<degree>(growth, at(number), at(number + 1.0));
}

BANKWRIGHT_INLINE void ChargeRates::at(Now const& now, double* charge_rates, double* lag_rates) {
    lanes_.at(now.amperes, lag_rates,
              [this](std::size_t battery, double amperes) { return piece_at(battery, amperes); });
    for (std::size_t b = 0; b < laws_.size(); ++b) {
        auto const amperes = now.amperes[b];
        lag_rates[b] -= recovery_rate * now.lags[b];
        charge_rates[b] = amperes * (amperes >= 0.0 ? given_[b] : kept_[b]);
    }
    if (!charging_) return;
    for (std::size_t b = 0; b < laws_.size(); ++b)
        if (now.amperes[b] < 0.0)
            charge_rates[b] *=
                share_stored(bank_.batteries[b], StateOfCharge::of(now.charges[b]), bank_.system.ambient);
}

BANKWRIGHT_INLINE ChargeRates::Slopes ChargeRates::slopes_at(std::size_t battery, double amperes, double charge) const {
    auto const share = [&](double at) {
        return charging_ && amperes < 0.0
                   ? share_stored(bank_.batteries[battery], StateOfCharge::of(at), bank_.system.ambient)
                   : 1.0;
    };
    constexpr double near = 1e-6;
    auto const by_amperes = amperes >= 0.0 ? given_[battery] : kept_[battery];
    auto const piece = piece_at(battery, amperes);
    auto const growth = piece.at(amperes * (1.0 + near) + 1e-300) - piece.at(amperes);
    return {by_amperes * share(charge), amperes > 0.0 ? growth / (amperes * near) : 0.0,
            by_amperes * amperes * (share(charge) - share(charge - near)) / near};
}

} // namespace bankwright
