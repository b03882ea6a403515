// What is on a hook-up sheet? Its lines, once, with the names of parts and terminals in backquotes; a text and a page
// lay them out, each in its own way.
#pragma once

#include "bankwright/analyses/hookup.hpp"
#include "bankwright/linkage.hpp"

#include <optional>
#include <string>
#include <vector>

namespace bankwright::hookup_words {

// One reading that is asked for.
struct ReadingLines {
    std::string when;               // "before", "after", "then", "alone"
    std::string where;              // "red on `A+`, black on `A-`"
    std::string expected;           // "expect 12.8 V (12.7 V to 12.9 V)" or "floating"
    std::vector<std::string> wrong; // "-12.8 V: A is the wrong way around": what else it may read, and why
};

struct StepLines {
    std::string act;   // "land `J1`"
    std::string title; // the same with its ends and copper: "land `J1`: `B-` first, then `A+` (6 AWG, 12 in, red)"
    std::optional<ReadingLines> before;
    std::vector<std::string> flows; // what a closed loop drives, and up to what gap it may be closed
    std::optional<ReadingLines> after;
    std::string left;  // what is still true afterwards; empty: nothing that was not said before
    std::string place; // where it is done; empty where the whole boat is one place
};

// A battery alone, with what it reads if something is wrong with it; empty where nothing is to be told.
struct BatteryLines {
    ReadingLines reading;
    std::string red, black, expected, low, high;
    std::string turned, nearly_flat, dead_cell;
};

struct Sheet {
    std::vector<std::string> how_to_read;
    std::vector<std::string> to_begin_with; // to tick off
    std::string left_open;                  // empty: nothing
    std::vector<BatteryLines> batteries;
    std::vector<StepLines> connect;
    std::size_t dead_steps = 0; // of these come before `with_ohmmeter`, to tick off
    std::vector<std::string> with_ohmmeter;
    std::string loops;                   // what the order is worth
    std::vector<std::string> at_the_end; // when every reading has been right
    std::vector<StepLines> disconnect;
};

Sheet sheet(HookupResult const& result, Bank const& bank, HookupOptions const& options);

inline constexpr char to_begin_with[] = "to begin with";
inline constexpr char each_alone[] = "each battery alone, before anything is landed";
inline constexpr char connect[] = "connect";
inline constexpr char connect_dead[] = "connect what is dead";
inline constexpr char with_an_ohmmeter[] = "with an ohmmeter, before the first battery is joined";
inline constexpr char at_the_end[] = "when every reading has been right";
inline constexpr char disconnect[] = "disconnect, every load off and every charger unplugged";

} // namespace bankwright::hookup_words

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/hookup_words_inl.hpp"
#endif
