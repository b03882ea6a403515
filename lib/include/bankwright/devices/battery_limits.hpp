// Where must a discharge or a charge of a battery stop? Its own figures first, else those of its chemistry
// (data/tables/chemistries.toml, mostly common practice).
#pragma once

#include "bankwright/devices/battery.hpp"

#include <optional>

namespace bankwright {

// A lithium battery opens its own circuit beyond its limits; a lead-acid one suffers and goes on.
bool has_protective_disconnect(Battery const&);

// Battery voltage at which a discharge ends: `low_cutoff`, else per cell of the chemistry. None without either.
std::optional<Voltage> low_cutoff(Battery const&);

// Battery voltage at which a charge ends: `high_cutoff`, else per cell of the chemistry. None without either.
std::optional<Voltage> high_cutoff(Battery const&);

// `max_discharge`, else the chemistry's usual rate x capacity. None where nothing but resistance limits it.
std::optional<Current> discharge_limit(Battery const&);

// `max_charge`, else the chemistry's usual rate x capacity. None without either.
std::optional<Current> charge_limit(Battery const&);

// The charge at which nobody plans to go on: half for lead-acid, a fifth for lithium [common practice].
constexpr StateOfCharge usual_reserve(Chemistry chemistry) {
    return StateOfCharge::percent(is_lithium(chemistry) ? 20.0 : 50.0);
}

struct TemperatureLimits {
    Temperature charge_low;
    Temperature charge_high;
    Temperature discharge_low;
    Temperature discharge_high;
};
TemperatureLimits temperature_limits(Chemistry);

} // namespace bankwright

#include "bankwright/linkage.hpp"
#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/devices/battery_limits_inl.hpp"
#endif
