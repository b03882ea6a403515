// Which readings are a slip of who read, not what the bank showed: leads exchanged, a decimal point, a battery fresh
// from its charger, more than there is?
//
// A reading is doubted where no single fault explains the readings and one slip does, never where it was read twice the
// same.
#pragma once

#include "bankwright/analyses/trace/expected_readings.hpp"
#include "bankwright/analyses/trace/reading_likelihood.hpp"
#include "bankwright/analyses/trace/suspect_chances.hpp"
#include "bankwright/analyses/trace/taken_reading.hpp"
#include "bankwright/devices/battery_voltage.hpp"
#include "bankwright/network/build.hpp"
#include "bankwright/units/print.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace bankwright::internal::doubting {

// The most that a battery shows at rest, and that all of them give together.
class FullBank {
public:
    explicit FullBank(Bank const& bank, PartSpread const& spread)
        : expected_(wiring_of(build(full(bank), suspecting::at_rest())), spread) {
        for (auto const& battery : full(bank).batteries)
            most_ += std::abs(open_circuit_voltage(battery, bank.system.ambient).value());
        for (auto const& charger : bank.chargers) {
            is_charging_ = is_charging_ || charger.connected.value_or(false);
            if (charger.connected.value_or(false) && charger.voltage) most_ += charger.voltage->value();
        }
    }

    double most() const { return 1.15 * most_; } // [V] between any two terminals, surface charge included

    // [V] what is too much for rest and yet not strange: surface charge. None where it is neither.
    std::optional<double> less_than(int red, int black, double volts, double error) const {
        double const rested = expected_.volts(red, black);
        bool const is_more = std::abs(volts) > 1.012 * std::abs(rested) + error;
        if (is_charging_ || rested * volts <= 0.0 || std::abs(rested) < 1.0 || !is_more) return std::nullopt;
        return std::abs(volts) <= 1.12 * std::abs(rested) ? std::optional(rested) : std::nullopt;
    }

private:
    static Bank full(Bank bank) {
        for (auto& battery : bank.batteries) {
            auto const stated = open_circuit_voltage(battery, bank.system.ambient);
            if (!battery.chemistry) continue;
            auto const charged = open_circuit_voltage(battery, StateOfCharge::percent(100.0), bank.system.ambient);
            battery.emf = std::max(stated, charged);
        }
        return bank;
    }

    ExpectedReadings expected_;
    double most_ = 0.0; // [V]
    bool is_charging_ = false;
};

// What a slip would have made of what was shown.
struct Slip {
    DoubtfulReading::Why why;
    double factor; // of the value read: what it then was
};
inline constexpr Slip slips[] = {{DoubtfulReading::Why::leads_exchanged, -1.0},
                                 {DoubtfulReading::Why::decimal_point, 0.1},
                                 {DoubtfulReading::Why::decimal_point, 10.0}};

// One slip: of one reading, or of all where the meter's leads are in each other's jacks.
struct Doubt {
    std::vector<std::size_t> numbers; // among the readings weighed
    Slip slip{DoubtfulReading::Why::impossible, 1.0};
    double weight = 0.0; // as a suspect's
};

// Of a reading, against none [common practice, no source: a few in a hundred].
inline constexpr double chance_of_slip = 0.01;

// A suspect that comes near, with what it makes of each reading.
struct NearSuspect {
    double chance = 0.0;                // its logarithm
    std::vector<ExpectedReading> owned; // where nobody else holds them
    std::vector<ExpectedReading const*> expected;
};

// With this slip made good, the weight of the likeliest suspect that explains all readings; none if none does.
inline std::optional<double> weight_with(Slip const& slip, std::vector<std::size_t> const& numbers,
                                         std::vector<NearSuspect> const& near, std::vector<double> values,
                                         std::vector<double> const& errors, double explained) {
    for (auto const r : numbers)
        values[r] *= slip.factor;
    std::optional<double> best;
    for (auto const& suspect : near) {
        ReadingLikelihood const likelihood(suspect.expected, values, errors);
        double const weight = suspect.chance + likelihood.logarithm();
        if (likelihood.misfit() <= explained && (!best || weight > *best)) best = weight;
    }
    if (best) *best += std::log(chance_of_slip);
    return best;
}

// The slip with which a suspect explains all readings; the likeliest. None if there is none.
inline std::optional<Doubt> one_slip(std::vector<NearSuspect> const& near, std::vector<double> const& values,
                                     std::vector<double> const& errors, std::vector<char> const& open_to_doubt,
                                     double explained) {
    std::optional<Doubt> found;
    auto const consider = [&](Slip const& slip, std::vector<std::size_t> const& numbers) {
        auto const weight = weight_with(slip, numbers, near, values, errors, explained);
        if (weight && (!found || *weight > found->weight)) found = Doubt{numbers, slip, *weight};
    };
    std::vector<std::size_t> all;
    for (std::size_t r = 0; r < values.size(); ++r) {
        all.push_back(r);
        if (!open_to_doubt[r] || std::abs(values[r]) < 5.0 * errors[r]) continue;
        for (auto const& slip : slips)
            consider(slip, {r});
    }
    if (all.size() > 1 && std::count(open_to_doubt.begin(), open_to_doubt.end(), 0) == 0) consider(slips[0], all);
    return found;
}

inline std::string in_words(DoubtfulReading::Why why, std::string const& shown, std::string const& fits) {
    switch (why) {
    case DoubtfulReading::Why::leads_exchanged:
        return fmt::format("{}: with the leads the other way around, {}, it would fit", shown, fits);
    case DoubtfulReading::Why::decimal_point:
        return fmt::format("{}: {} would fit, a slip of the decimal point or the wrong range", shown, fits);
    case DoubtfulReading::Why::not_rested:
        return fmt::format("{} is more than a full, rested bank shows there, {}: fresh from a charger; let it rest for "
                           "some hours, or draw some amperes from it for a minute",
                           shown, fits);
    case DoubtfulReading::Why::impossible:
        break;
    }
    return fmt::format("{} is more than this bank can give, {}", shown, fits);
}

} // namespace bankwright::internal::doubting
