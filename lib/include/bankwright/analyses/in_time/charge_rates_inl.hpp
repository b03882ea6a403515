#pragma once

#include "bankwright/analyses/in_time/charge_rates.hpp"
#include "bankwright/devices/battery_acceptance.hpp"

#include <algorithm>
#include <limits>

namespace bankwright {

BANKWRIGHT_INLINE ChargeRates::ChargeRates(Bank const& bank, bool charging)
    : bank_(bank), charging_(charging), lanes_(bank.batteries.size()) {
    for (auto const& battery : bank.batteries)
        laws_.push_back(discharge_law(battery, bank.system.ambient));
}

BANKWRIGHT_INLINE ChargeRates::Lanes::Piece ChargeRates::piece_at(std::size_t battery, double amperes) const {
    constexpr double infinite = std::numeric_limits<double>::infinity();
    constexpr double reach = 1.0 / 16.0;
    auto const& law = laws_[battery];
    auto const full = law.full.value(); // [C]
    if (!(amperes >= 0.0)) {
        auto const kept = coulombic_efficiency(*bank_.batteries[battery].chemistry).value();
        return {-infinite, 0.0, 0.0, {0.0, -kept / full}};
    }
    auto const rated = law.rated_current().value();
    if (amperes < rated) return {0.0, rated, 0.0, {0.0, -1.0 / full}};
    Lanes::Piece piece{std::max(rated, amperes * (1.0 - reach)), amperes * (1.0 + reach), amperes, {}};
    auto term = -1.0 / peukert_time(law.full, law.rated, law.exponent, amperes * si::ampere).value();
    for (std::size_t k = 0; k <= degree; ++k) { // of (1 + u)^n, u = (amperes' - amperes) / amperes
        piece.coefficients[k] = term;
        term *= (law.exponent - static_cast<double>(k)) / static_cast<double>(k + 1) / amperes;
    }
    return piece;
}

BANKWRIGHT_INLINE void ChargeRates::at(double const* amperes, double const* charges, double* rates) {
    lanes_.at(amperes, rates, [this](std::size_t battery, double now) { return piece_at(battery, now); });
    if (!charging_) return;
    for (std::size_t b = 0; b < laws_.size(); ++b)
        if (amperes[b] < 0.0) rates[b] *= share_stored(bank_.batteries[b], StateOfCharge::of(charges[b]));
}

} // namespace bankwright
