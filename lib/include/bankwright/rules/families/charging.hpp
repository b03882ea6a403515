// charging: does each charger output suit what lies across it, and does every battery get its share?
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/rules/rule.hpp"

#include <array>

namespace bankwright {

inline constexpr std::array charging_rules{
    RuleInfo{"charging/polarity", Level::error, "0.1.0", "a charger output with its + at the lower potential",
             "the charger and the batteries drive current through each other in series; most chargers are destroyed",
             "swap its two leads",
             "Kirchhoff's voltage law: the voltages along the wiring must not contradict each other [derived]"},
    RuleInfo{"charging/not-isolated", Level::error, "0.1.0",
             "a charger whose outputs share a negative, connected to batteries at different potentials",
             "the common negative shorts the batteries between them, whether the charger is on or not",
             "use a charger with isolated outputs, or one output across the whole string",
             "Kirchhoff's voltage law: the voltages along the wiring must not contradict each other [derived]"},
    RuleInfo{"charging/voltage", Level::error, "0.1.0",
             "a charger's voltage outside what the chemistry and the number of cells across its output allow (1 % is "
             "tolerated)",
             "too little never fully charges the battery, too much boils or ruins it",
             "set the charger for this chemistry and number of cells, or land it across the batteries it is made for",
             "charging voltages by chemistry, common practice; see data/tables/chemistries.toml"},
    RuleInfo{"charging/partial", Level::warning, "0.1.0",
             "some batteries of a series string are charged and others are not",
             "the uncharged ones fall behind a little more each time and are driven flat by the others",
             "give every battery an output of its own, or charge across the whole string",
             "common practice, no single source"},
    RuleInfo{"charging/rate", Level::warning, "0.1.0",
             "a charging current above the battery's own limit or that of its chemistry",
             "the battery gasses, heats and ages early", "use a smaller charger, or share it between more strings",
             "the battery's own max_charge; else by chemistry, common practice"},
    RuleInfo{"charging/voltage-drop", Level::warning, "0.1.0",
             "charger leads that drop more than 3 % of its voltage at its full current",
             "the charger sees a higher voltage than the battery does, takes it for full too early, and never fully "
             "charges it",
             "use thicker or shorter leads, or a charger that senses at the battery", "common practice, no source"},
    RuleInfo{"charging/cold", Level::error, "0.1.0", "a lithium battery with a charger across it, below 0 degC",
             "metallic lithium is plated inside the cells, which ruins them and can short them later",
             "warm the battery first, or keep the charger off it until it is",
             "lithium plating below 0 degC [quoted: general pages]"},
};

void check_charging(Seen const& seen, Findings& findings);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/rules/families/charging_inl.hpp"
#endif
