// load: does each motor and load get a voltage that it can live with?
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/rules/rule.hpp"

#include <array>

namespace bankwright {

inline constexpr std::array load_rules{
    RuleInfo{"load/under-voltage", Level::warning, "0.1.0",
             "a voltage at the terminals of a motor or load below its min_voltage in the operating point",
             "its electronics switch off, or it draws more current to make up for it",
             "use thicker or shorter conductors, a fuller or larger bank, or less throttle",
             "the part's own min_voltage; computed "
             "operating point"},
    RuleInfo{
        "load/over-voltage", Level::error, "0.1.0",
        "a voltage at the terminals of a load above its max_voltage, with the bank full and at rest or while a "
        "connected charger or a converter holds it; or a motor on a bank of more than its nameplate voltage",
        "its electronics can be destroyed as soon as it is connected; a motor draws several times its rated current",
        "use a load made for the full bank's voltage, or a converter",
        "the part's own max_voltage or nameplate voltage; open-circuit voltage of the full bank by chemistry; the "
        "charger's own voltage"},
    RuleInfo{"load/nameplate-voltage", Level::error, "0.1.0", "a motor on a bank of less than its nameplate voltage",
             "it turns slowly or its electronics do not start, and the bank was meant for something else",
             "join more batteries in series, or use a motor made for the bank's voltage",
             "the part's own nameplate voltage; nominal voltages along the wiring"},
    RuleInfo{"load/flat-battery", Level::warning, "0.1.0",
             "a battery at 5 % of its charge or less in a bank from which something is to run",
             "the run is over as it begins; a lead-acid battery that is left flat is ruined within days",
             "fully charge it before anything is switched on, then measure it at rest",
             "common practice, no single source"},
    RuleInfo{
        "load/runtime", Level::warning, "0.1.0",
        "a simulated run, at the throttle and loads as described, that is shorter than the wanted `runtime`",
        "it ends before the boat is back",
        "draw less (with a motor, use less throttle); or use larger batteries or another string; match the battery "
        "that ends the run with the others",
        "Peukert's law in its rated form [read], from the battery's own 20-hour capacity and reserve minutes; see "
        "data/tables/chemistries.toml"},
};

void check_loads(Seen const& seen, Findings& findings);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/rules/families/load_inl.hpp"
#endif
