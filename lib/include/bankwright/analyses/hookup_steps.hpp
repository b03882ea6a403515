// What does a hook-up consist of: what is asked of it, its steps, what the meter reads at each, and what may be wrong?
#pragma once

#include "bankwright/units/fractions.hpp"
#include "bankwright/units/quantities.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace bankwright {

struct HookupOptions {
    double of_reading = 0.005; // 0.5 % and 2 digits: the usual 3 1/2 digit handheld (common practice, no source)
    int digits = 2;
    std::optional<Voltage> resolution; // one digit; none: of a 2000-count meter, 0.01 V below 20 V and 0.1 V above
    StateOfCharge charge_within = StateOfCharge::percent(5.0); // of the charge that the file states, either way
};

enum class MistakeKind {
    battery_turned,  // `part` is the wrong way around
    battery_low,     // `part` is down to a fifth of its charge
    cell_dead,       // one cell of `part` gives nothing
    end_elsewhere,   // the end of `part` that belongs on `at` is on `onto`
    leads_exchanged, // what belongs on `at` of `part` is on `onto`, and the other way around
    // What a sheet does not warn of, and a wrong reading may come of all the same:
    not_joined, // `part` is not on, not closed, or does not conduct
    bypassed,   // what belongs on one side of the device `part` is on the other: nothing flows through it
    across,     // a conductor that nobody drew, from `at` to `onto`
};

struct Mistake {
    MistakeKind kind = MistakeKind::battery_turned;
    std::string part;
    std::string at; // terminals
    std::string onto;
    friend bool operator==(Mistake const&, Mistake const&) = default;
};

struct Cause {
    Mistake mistake;
    std::optional<Voltage> reads;        // what it alone would make the meter read; none: floating
    std::optional<Voltage> through_load; // what it reads where a load that is off conducts, if that is another
    bool depends_on_load = false;        // it does read another
};

// Causes that the meter cannot tell apart.
struct WrongReading {
    std::vector<Cause> causes; // never empty; the reading is that of the first
};

struct MeterReading {
    std::string red; // terminals; black is the one at the lower potential
    std::string black;
    std::string loose; // of the two: stands for the loose end of a conductor that is landed there, in another place
    std::string loose_part;          // that conductor
    std::optional<Voltage> expected; // none: the two share no path, a meter shows 0 V or drifts about it
    Voltage low{};                   // with the meter's error and the batteries' state; 0 where it floats
    Voltage high{};
    std::vector<WrongReading> wrong; // what no reading before this one would have shown
};

// A step that closes a loop through batteries: what then flows, until their charges are even.
struct Equalizing {
    Voltage gap{};                    // what drives it
    Current expected{};               // at first
    Current at_most{};                // with every battery at the worst end of its range
    std::optional<Voltage> gap_limit; // reading above which a battery would carry more than it may; none: not known
    std::string limited_by;           // that battery
};

enum class HookupAction {
    land,
    fit,
    close,
    read, // a receptacle, with its plug apart
    open, // what was closed for that reading
    mate,
};

enum class DeadCheckKind {
    run,   // from end to end of `part`: continuity
    loop,  // through `part` and back through `other`, their far ends clipped together: continuity, and none without
    apart, // from + to -: none
    load,  // from + to - where loads hang without a plug: nothing that is close to a short
    hull,  // from `red` to the hull, and to earth: none
};

// With an ohmmeter, before the first battery is joined. Both its leads are in one place, unless one is lengthened.
struct DeadCheck {
    DeadCheckKind kind = DeadCheckKind::run;
    std::string part;
    std::string other;
    std::string red; // terminals; the end of a conductor that is landed later is loose there
    std::string black;
    std::string clip; // the far ends of a loop
    std::string onto;
    bool lengthened = false;
    std::vector<std::string> loads; // of a load check: all that hang between the two leads, `part` among them
    std::string place;              // of the leads, as places_of() calls it
    bool negative = false;          // of a hull check: its conductor is of the negative side, which may be bonded
    std::optional<Resistance> ohms; // of a load check: its own resistance, where the file states it
};

struct HookupStep {
    HookupAction action = HookupAction::land;
    std::string part;
    std::vector<std::string> places; // where the hands are: of a long conductor two, in the order of its ends
    std::string first;               // the end that is landed first: the one with less voltage behind it
    std::string last;
    bool dead = false;                  // no battery on either side: there is nothing to read
    bool live_make = false;             // it feeds a load or a plug that no breaker or switch keeps apart
    std::optional<MeterReading> before; // across the gap; of a plug, across its receptacle
    std::optional<MeterReading> after;
    std::optional<Equalizing> equalizing;
};

// A step of taking apart: the last that was made is the first to go.
struct DisconnectStep {
    HookupAction undoes = HookupAction::land;
    std::string part;
    std::vector<std::string> places; // likewise
    std::string first;               // the end that comes off first
    std::string last;
    std::optional<MeterReading> then;       // across what was parted
    std::optional<MeterReading> still_live; // the largest voltage left anywhere; none: only single batteries
};

struct HookupResult {
    std::vector<MeterReading> batteries; // each alone, before the first step; the bank's order
    std::vector<DeadCheck> dead;         // after the steps that are dead, before the first that is live
    std::vector<HookupStep> steps;
    std::vector<DisconnectStep> disconnect;
    std::vector<std::string> left_open; // breakers, fuses, switches and plugs that the file itself has open
    Voltage largest_gap{};              // over any gap that closes a loop
    bool proven = true;                 // no other order of the same phases has a smaller one
    std::size_t states = 0;             // that the search solved
};

} // namespace bankwright
