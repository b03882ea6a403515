// Every key of a bank file, once: what it holds, its range, its default, what it means.
// The reader, the `did you mean`, the JSON Schema and the printed reference all come from this table.
#pragma once

#include "bankwright/config/key_spec.hpp"
#include "bankwright/devices/chemistry.hpp"
#include "bankwright/devices/protection_trip.hpp"

#include <array>
#include <span>
#include <string_view>

namespace bankwright {

inline constexpr int format_version = 1; // the only one that this bankwright reads

namespace keys {

inline constexpr std::array<std::string_view, 2> contact_words{"closed", "open"};
inline constexpr std::array<std::string_view, 2> mating_words{"mated", "apart"};
inline constexpr std::array<std::string_view, 4> selector_words{"off", "1", "2", "both"}; // as SelectorPosition
inline constexpr std::array<std::string_view, 2> role_words{"start", "house"};            // as Role
inline constexpr std::array<std::string_view, 4> charger_words{"shore", "alternator", "solar",
                                                               "converter"}; // as ChargerKind
inline constexpr std::array<std::string_view, 2> control_words{"pwm", "direct"};

// Ranges in SI. Their upper ends are far above any small boat: they catch a slipped prefix, not an unusual boat.
inline constexpr Range volts{0.0, 1000.0, true};
inline constexpr Range volts_or_none{0.0, 1000.0};
inline constexpr Range amperes{0.0, 1e6, true};
inline constexpr Range amperes_or_none{0.0, 1e6};
inline constexpr Range ohms{0.0, 1e6, true};
inline constexpr Range ohms_or_none{0.0, 1e6};
inline constexpr Range watts{0.0, 1e7, true};
inline constexpr Range watts_or_none{0.0, 1e7};
inline constexpr Range coulombs{0.0, 3600.0 * 1e5, true}; // to 100 000 Ah
inline constexpr Range meters{0.0, 1000.0, true};
inline constexpr Range seconds{0.0, 3600.0 * 24.0 * 366.0, true}; // to a year
inline constexpr Range kilograms{0.0, 10'000.0, true};
inline constexpr Range newtons{0.0, 1e5, true};
inline constexpr Range volts_per_kelvin{-0.01, 0.0};
inline constexpr Range weather{273.15 - 60.0, 273.15 + 100.0}; // of batteries and air
inline constexpr Range copper{273.15 - 60.0, 273.15 + 250.0};  // of conductors and their insulation
inline constexpr Range copper_area{0.01e-6, 2000e-6};          // 0.01 to 2000 mm2
inline constexpr Range part_of_whole{0.0, 1.0};
inline constexpr Range part_of_rated{0.0, 1.5, true};
inline constexpr Range part_left{0.0, 1.0, true};
inline constexpr Range part_lost{0.0, 0.5, true};
inline constexpr Range one_or_more{1.0, 1000.0};
inline constexpr Range none_or_more{0.0, 1000.0};

inline constexpr KeySpec model{"model", KeyKind::model, "\"deck-agm\"",
                               "a set of keys in [models]; the part's own keys win"};

inline constexpr KeySpec fixed{"fixed", KeyKind::boolean, "true", "`size` leaves it as it is", "false"};

inline constexpr KeySpec place{
    "place", KeyKind::text, "\"bow\"",
    "where on the boat it is; parts that a short conductor joins are in one place unless said",
    "from the lengths of conductors"};

inline constexpr KeySpec price{"price", KeyKind::price, "\"189.50 USD\"", "what one costs, with the currency"};

inline constexpr KeySpec role{
    "role", KeyKind::choice, "\"start\"", "start: it cranks an engine for seconds; house: everything else", {},
    {},     role_words};

inline constexpr std::array root{
    KeySpec{"bankwright", KeyKind::integer, "1", "version of this format", {}, {1.0, 1.0}},
    KeySpec{"name", KeyKind::text, "\"16-ft jon boat, bow motor\"", "what the bank is, for people"},
    KeySpec{"parts", KeyKind::texts, "[\"parts.toml\"]",
            "part lists whose models are used; paths from this file's folder"},
};

inline constexpr std::string_view part_list_version = "bankwright-parts";
inline constexpr std::string_view readings_version = "bankwright-readings"; // its other keys: reading_keys.hpp
inline constexpr std::string_view log_version = "bankwright-log";           // its other keys: log_keys.hpp

inline constexpr std::array part_list{
    KeySpec{part_list_version, KeyKind::integer, "1", "version of this format", {}, {1.0, 1.0}},
    KeySpec{"name", KeyKind::text, "\"what the yard buys\"", "what the list is, for people"},
};

inline constexpr std::array<std::string_view, 3> level_words{"note", "warning", "error"}; // in the order of Level

inline constexpr std::array settings{
    KeySpec{"fail-on",
            KeyKind::choice,
            "\"warning\"",
            "exit with 1 if there is a finding of this level or worse",
            "error",
            {},
            level_words},
    KeySpec{"only", KeyKind::texts, "[\"wiring\", \"protection\"]", "check only these rules or families", "all"},
    KeySpec{"skip", KeyKind::texts, "[\"matching/mixed-age\"]", "leave these rules or families out", "none"},
};

inline constexpr std::array system{
    KeySpec{"voltage", KeyKind::voltage, "\"36 V\"", "nominal voltage of the system, what the load expects", {}, volts},
    KeySpec{"ambient", KeyKind::temperature, "\"25 degC\"",
            "temperature of batteries and conductors unless they say otherwise", "25 degC", weather},
    KeySpec{"runtime", KeyKind::duration, "\"3 h\"", "wanted run, at the motor's throttle", {}, seconds},
    KeySpec{"reserve", KeyKind::fraction, "\"50 %\"", "charge of a battery at which a run is over",
            "50 % for lead-acid, 20 % for lithium", part_of_whole},
    KeySpec{"joint", KeyKind::resistance, "\"0.1 mohm\"",
            "one bolted or crimped joint, unless a conductor says otherwise", "0 ohm", ohms_or_none},
    KeySpec{"drop", KeyKind::fraction, "\"3 %\"", "wanted voltage drop, out and back, at full throttle", "3 %",
            part_lost},
    KeySpec{"stock", KeyKind::texts, "[\"6 AWG\", \"4 AWG\"]", "sizes of conductors that can be had, for `size`",
            "even gauges from 18 AWG, 1/0 to 4/0 AWG; sections of IEC 60228"},
};

inline constexpr std::array battery{
    model,
    KeySpec{"chemistry", KeyKind::choice, "\"agm\"", "family of battery", {}, {}, chemistry_names},
    KeySpec{"voltage", KeyKind::voltage, "\"12 V\"", "nominal voltage, as on the label", "from chemistry and cells",
            volts},
    KeySpec{"cells", KeyKind::integer, "6", "cells in series inside", "from chemistry and voltage", one_or_more},
    KeySpec{"capacity", KeyKind::charge, "\"100 Ah\"", "rated capacity at 25 degC over capacity_hours", {}, coulombs},
    KeySpec{"capacity_hours", KeyKind::duration, "\"20 h\"", "duration of the discharge that the capacity is rated for",
            "20 h", seconds},
    KeySpec{"reserve", KeyKind::duration, "\"185 min\"", "reserve capacity: time at 25 A and 27 degC", {}, seconds},
    KeySpec{"cranking", KeyKind::current, "\"650 A\"", "cold cranking amperes", {}, amperes},
    KeySpec{"resistance", KeyKind::resistance, "\"4.0 mohm\"", "internal resistance of the whole battery",
            "from cranking, else from chemistry and capacity", ohms},
    KeySpec{"charge", KeyKind::fraction, "\"98 %\"", "state of charge", "100 %", part_of_whole},
    KeySpec{"health", KeyKind::fraction, "\"90 %\"", "usable capacity over rated", "100 %", part_of_rated},
    KeySpec{"emf", KeyKind::voltage, "\"12.71 V\"", "measured open-circuit voltage",
            "from chemistry, charge and temperature", volts_or_none},
    KeySpec{"temperature", KeyKind::temperature, "\"25 degC\"", "temperature of the battery", "system.ambient",
            weather},
    KeySpec{"made", KeyKind::date, "2024-03-01", "date of manufacture"},
    KeySpec{"dead_cells", KeyKind::integer, "1", "cells that give no voltage", "0", none_or_more},
    KeySpec{"weak_cells", KeyKind::integer, "1", "cells that hold less than the others", "0", none_or_more},
    KeySpec{"weak_capacity",
            KeyKind::fraction,
            "\"60 %\"",
            "what a weak cell holds, over what a sound one does",
            {},
            part_left},
    KeySpec{"max_discharge", KeyKind::current, "\"100 A\"", "largest continuous discharge current", {}, amperes},
    KeySpec{"max_charge", KeyKind::current, "\"30 A\"", "largest charge current", {}, amperes},
    KeySpec{"max_series", KeyKind::integer, "4", "most of them in series", {}, one_or_more},
    KeySpec{"max_parallel", KeyKind::integer, "4", "most of them in parallel", {}, one_or_more},
    KeySpec{"low_cutoff",
            KeyKind::voltage,
            "\"10.5 V\"",
            "where its protective disconnect, or its owner, ends a discharge",
            {},
            volts},
    KeySpec{"high_cutoff", KeyKind::voltage, "\"14.8 V\"", "where its protective disconnect ends a charge", {}, volts},
    KeySpec{"mass", KeyKind::mass, "\"30 kg\"", "mass of the battery", {}, kilograms},
    place,
    role,
    price,
    KeySpec{"size", KeyKind::dimensions, "\"330 x 173 x 240 mm\"", "length, width and height of the battery"},
};

inline constexpr std::array run{
    model,
    KeySpec{"from", KeyKind::terminal, "\"A+\"", "terminal at one end; its current is positive from here"},
    KeySpec{"to", KeyKind::terminal, "\"B-\"", "terminal at the other end"},
    KeySpec{"size", KeyKind::wire_size, "\"6 AWG\"", "gauge or cross-section of the copper", {}, copper_area},
    KeySpec{"length", KeyKind::length, "\"17 ft\"", "length of the conductor", {}, meters},
    KeySpec{"resistance", KeyKind::resistance, "\"6.7 mohm\"",
            "the whole conductor with its joints; overrides size, length and joint",
            "from size, length, temperature and joint", ohms_or_none},
    KeySpec{"insulation", KeyKind::temperature, "\"105 degC\"", "temperature rating of the insulation", {}, copper},
    KeySpec{"tinned", KeyKind::boolean, "true", "tinned copper", "false"},
    KeySpec{"color", KeyKind::text, "\"red\"", "color of the insulation"},
    KeySpec{"joint", KeyKind::resistance, "\"0.1 mohm\"", "one of its two joints", "system.joint", ohms_or_none},
    KeySpec{"bundle", KeyKind::integer, "3", "current-carrying conductors bundled together, this one included", "1",
            one_or_more},
    KeySpec{"enclosed", KeyKind::boolean, "true", "in a sheath, conduit or box all the way", "false"},
    KeySpec{"engine_space", KeyKind::boolean, "true", "runs through an engine space", "false"},
    KeySpec{"temperature", KeyKind::temperature, "\"30 degC\"", "temperature of the copper", "system.ambient", copper},
    place,
    fixed,
};

inline constexpr std::array protection{
    model,
    KeySpec{"rating", KeyKind::current, "\"60 A\"", "rated current", {}, amperes},
    KeySpec{"interrupts", KeyKind::current, "\"3000 A\"", "largest fault current that it can break", {}, amperes},
    KeySpec{"voltage", KeyKind::voltage, "\"48 V\"", "largest voltage that it can break", {}, volts},
    KeySpec{"resistance", KeyKind::resistance, "\"1.0 mohm\"", "resistance from line to load", "0 ohm", ohms_or_none},
    KeySpec{"state",
            KeyKind::choice,
            "\"closed\"",
            "closed, or open: tripped, switched off, blown",
            "closed",
            {},
            contact_words},
    KeySpec{"class",
            KeyKind::text,
            "\"iso-8820-3\"",
            "the standard that its time-current band comes from; of a standard that is not listed no band is known",
            {},
            {},
            trip_class_names},
    KeySpec{"trips", KeyKind::trips, "[[\"200 %\", \"10 s\", \"60 s\"]]",
            "the maker's own time-current band: at a multiple of the rating it opens between two times",
            "from `class`"},
    place,
    fixed,
    price,
    KeySpec{"on", KeyKind::terminal, "\"A+\"", "sits straight on that post, which is then its line terminal"},
};

inline constexpr std::array switch_{
    model,
    KeySpec{"rating", KeyKind::current, "\"100 A\"", "rated continuous current", {}, amperes},
    KeySpec{"resistance", KeyKind::resistance, "\"0.2 mohm\"", "resistance when closed", "0 ohm", ohms_or_none},
    KeySpec{"state", KeyKind::choice, "\"closed\"", "closed or open", "closed", {}, contact_words},
    place,
    price,
};

inline constexpr std::array shunt{
    model,
    KeySpec{"rating", KeyKind::current, "\"500 A\"", "rated continuous current", {}, amperes},
    KeySpec{"drop", KeyKind::voltage, "\"50 mV\"", "voltage across it at its rating", {}, volts},
    KeySpec{"resistance", KeyKind::resistance, "\"0.1 mohm\"", "resistance; overrides rating and drop",
            "from rating and drop", ohms_or_none},
    place,
};

inline constexpr std::array relay{
    model,
    KeySpec{"closes_above", KeyKind::voltage, "\"13.3 V\"", "combines two banks when one is charged above this",
            "whenever a charger works", volts},
    KeySpec{"opens_below", KeyKind::voltage, "\"12.8 V\"", "parts them again below this", {}, volts},
    KeySpec{"rating", KeyKind::current, "\"140 A\"", "rated continuous current", {}, amperes},
    KeySpec{"state",
            KeyKind::choice,
            "\"open\"",
            "closed or open, by hand",
            "closed while a charger holds closes_above",
            {},
            contact_words},
    place,
};

inline constexpr std::array selector{
    model,
    KeySpec{"position", KeyKind::choice, "\"both\"", "what its common is joined to", "1", {}, selector_words},
    KeySpec{"rating", KeyKind::current, "\"200 A\"", "rated continuous current", {}, amperes},
    place,
};

inline constexpr std::array busbar{
    model,
    KeySpec{"studs", KeyKind::integer, "4", "studs on it", {}, one_or_more},
    KeySpec{"rating", KeyKind::current, "\"150 A\"", "rated continuous current", {}, amperes},
    place,
    price,
};

inline constexpr std::array connector{
    model,
    KeySpec{"rating", KeyKind::current, "\"60 A\"", "rated continuous current", {}, amperes},
    KeySpec{"contact", KeyKind::resistance, "\"0.5 mohm\"", "contact resistance of one pole", "0 ohm", ohms_or_none},
    KeySpec{"state", KeyKind::choice, "\"mated\"", "mated, or apart: the plug is out", "mated", {}, mating_words},
    place,
    KeySpec{"max_size", KeyKind::wire_size, "\"6 AWG\"", "thickest conductor that its terminals take", "about 6 AWG",
            copper_area},
    price,
};

inline constexpr std::array motor{
    model,
    KeySpec{"voltage", KeyKind::voltage, "\"36 V\"", "nameplate voltage", {}, volts},
    KeySpec{"current", KeyKind::current, "\"50 A\"", "nameplate current, at that voltage and full throttle",
            "taken from thrust and voltage", amperes},
    KeySpec{"throttle", KeyKind::fraction, "\"100 %\"", "duty cycle of its speed control", "100 %", part_of_whole},
    KeySpec{"winding", KeyKind::resistance, "\"80 mohm\"", "armature, brushes and leads inside", "0 ohm", ohms_or_none},
    KeySpec{"control",
            KeyKind::choice,
            "\"pwm\"",
            "speed control: pwm chops; direct is off or full",
            "pwm",
            {},
            control_words},
    KeySpec{"thrust",
            KeyKind::force,
            "\"445 N\"",
            "nameplate static thrust at full throttle; `lb` is read as pounds of force",
            {},
            newtons},
    KeySpec{"min_voltage", KeyKind::voltage, "\"30 V\"", "below this its speed control stops", {}, volts},
    place,
    KeySpec{"max_current", KeyKind::current, "\"50 A\"",
            "most that its control lets through; ratings go by it in place of the nameplate current", "no limit",
            amperes},
};

inline constexpr std::array load{
    model,
    KeySpec{"current", KeyKind::current, "\"4 A\"", "draws this current at any voltage", {}, amperes_or_none},
    KeySpec{"power", KeyKind::power, "\"60 W\"", "draws this power at any voltage", {}, watts_or_none},
    KeySpec{"resistance", KeyKind::resistance, "\"3 ohm\"", "is ohmic", {}, ohms},
    KeySpec{"min_voltage", KeyKind::voltage, "\"10.8 V\"", "lowest voltage that it works at", {}, volts},
    KeySpec{"max_voltage", KeyKind::voltage, "\"15 V\"", "largest voltage that it survives", {}, volts},
    place,
    role,
};

inline constexpr std::array charger{
    model,
    KeySpec{"outputs", KeyKind::integer, "3", "number of outputs", "1", {1.0, 12.0}},
    KeySpec{"isolated", KeyKind::boolean, "true", "its outputs share nothing; if false they share their negative",
            "true"},
    KeySpec{"voltage", KeyKind::voltage, "\"14.4 V\"", "voltage that each output holds", {}, volts},
    KeySpec{"current", KeyKind::current, "\"10 A\"", "most that each output gives", {}, amperes},
    KeySpec{"connected", KeyKind::boolean, "false", "charging: plugged in, the engine running, the sun out", "false"},
    place,
    KeySpec{"kind", KeyKind::choice, "\"alternator\"", "what it takes its power from", "shore", {}, charger_words},
    KeySpec{"fused", KeyKind::boolean, "true", "its maker has put a fuse into its leads at the battery", "false"},
    price,
    KeySpec{"compensation", KeyKind::voltage_per_kelvin, "\"-5 mV/K\"",
            "what it adds to its voltage for each kelvin of the batteries above 25 degC and each lead-acid cell",
            "0 mV/K", volts_per_kelvin},
};

inline constexpr std::array converter{
    model,
    KeySpec{"isolated", KeyKind::boolean, "true",
            "its input and output share nothing; if false they share their negative", "true"},
    KeySpec{"efficiency", KeyKind::fraction, "\"90 %\"", "what its output gives over what its input takes", "90 %",
            part_left},
    KeySpec{"voltage", KeyKind::voltage, "\"14.4 V\"", "voltage that its output holds", {}, volts},
    KeySpec{"power", KeyKind::power, "\"360 W\"", "most that its output gives", {}, watts},
    place,
};

inline constexpr std::array accept{
    KeySpec{"rule", KeyKind::text, "\"protection/too-far\"", "id of the rule whose finding is accepted"},
    KeySpec{"part", KeyKind::text, "\"feed\"", "part that the finding names first", "any part"},
    KeySpec{"reason", KeyKind::text, "\"in the battery box, conductor in loom\"", "why it is safe here"},
};

inline constexpr std::array part_list_needs{Requirement{part_list_version}};
inline constexpr std::array battery_needs{Requirement{"voltage | chemistry cells"},
                                          Requirement{"chemistry | emf resistance"},
                                          Requirement{"capacity | resistance | cranking"}};
inline constexpr std::array run_needs{Requirement{"from"}, Requirement{"to"}, Requirement{"resistance | size length"}};
inline constexpr std::array protection_needs{Requirement{"rating"}};
inline constexpr std::array shunt_needs{Requirement{"resistance | rating drop"}};
inline constexpr std::array converter_needs{Requirement{"voltage"}, Requirement{"power"}};
inline constexpr std::array motor_needs{Requirement{"voltage"}, Requirement{"current | thrust"}};
inline constexpr std::array load_needs{Requirement{"current | power | resistance", true}};
inline constexpr std::array accept_needs{Requirement{"rule"}};

} // namespace keys

// The sections that hold parts, in the order of PartKind.
inline constexpr std::array<SectionSpec, 15> part_sections{{
    {"batteries", "the batteries, each with its own two posts", keys::battery, keys::battery_needs, "X+ X-",
     PartKind::battery},
    {"jumpers", "short conductors between posts", keys::run, keys::run_needs, "", PartKind::jumper},
    {"cables", "longer conductors", keys::run, keys::run_needs, "", PartKind::cable},
    {"breakers", "resettable breakers", keys::protection, keys::protection_needs, "X.line X.load", PartKind::breaker},
    {"fuses", "fuses", keys::protection, keys::protection_needs, "X.line X.load", PartKind::fuse},
    {"switches", "switches", keys::switch_, {}, "X.1 X.2", PartKind::switch_},
    {"shunts", "shunts, in the negative, for a meter", keys::shunt, keys::shunt_needs, "X.1 X.2", PartKind::shunt},
    {"relays", "relays that combine two banks while charging", keys::relay, {}, "X.1 X.2", PartKind::relay},
    {"selectors", "battery selectors", keys::selector, {}, "X.1 X.2 X.common", PartKind::selector},
    {"busbars", "busbars, one node each", keys::busbar, {}, "X", PartKind::busbar},
    {"connectors", "receptacles with their plugs", keys::connector, {}, "X+ X- X.plug+ X.plug-", PartKind::connector},
    {"motors", "DC motors with a propeller", keys::motor, keys::motor_needs, "X+ X-", PartKind::motor},
    {"loads", "anything else that draws from the bank", keys::load, keys::load_needs, "X+ X-", PartKind::load},
    {"chargers", "chargers, on shore or on board", keys::charger, {}, "X.1+ X.1- ... per output", PartKind::charger},
    {"converters", "DC-to-DC converters", keys::converter, keys::converter_needs, "X.in+ X.in- X.out+ X.out-",
     PartKind::converter},
}};

inline constexpr SectionSpec root_section{"", "the file itself", keys::root};
inline constexpr SectionSpec system_section{"system", "the system as a whole", keys::system};
inline constexpr SectionSpec accept_section{"accept", "findings that somebody has looked at", keys::accept,
                                            keys::accept_needs};
inline constexpr std::string_view models_section = "models"; // named sets of the keys above

// Two other files: a part list holds these keys and [models]; the settings of `check` have a name of their own.
inline constexpr SectionSpec part_list_section{"", "a part list", keys::part_list, keys::part_list_needs};
inline constexpr SectionSpec settings_section{"", "the settings file of `bankwright check`", keys::settings};
inline constexpr std::string_view settings_file_name = "bankwright-settings.toml";

constexpr SectionSpec const& section_spec(PartKind kind) { return part_sections[static_cast<std::size_t>(kind)]; }

// The key of that name in a section; null where there is none.
constexpr KeySpec const* find_key(SectionSpec const& section, std::string_view name) {
    for (auto const& key : section.keys) // asked some hundred times a file: length and first letter tell most apart
        if (key.name.size() == name.size() && key.name[0] == name[0] && key.name == name) return &key;
    return nullptr;
}

} // namespace bankwright
