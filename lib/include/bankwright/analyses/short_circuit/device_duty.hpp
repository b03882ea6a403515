// How much must a breaker or fuse interrupt, by what, and can it?
#pragma once

#include "bankwright/tables/source.hpp"
#include "bankwright/units/quantities.hpp"

#include <optional>
#include <string>

namespace bankwright {

// Why a device must interrupt as much as it must: a computed short circuit, or ABYC E-11, by its table of cranking
// amperes or by its clause on banks above 2200 of them or 500 Ah.
enum class NeededBy { short_circuit, table, large_bank };

// What a device must interrupt: the largest of the three. Rules and commands alike go by it.
struct DeviceDuty {
    std::string id;
    Current most{}; // through it, over all places
    std::string at; // that place's terminal; empty: no short drives a current through it
    Current need{}; // 0 where `at` is empty
    NeededBy needed_by = NeededBy::short_circuit;
    std::optional<Current>
        table; // what the table alone asks for, where cranking amperes are all that the labels say of a short
    std::optional<Source> standard;    // that asks for it; none of a computed short
    std::optional<Current> interrupts; // as the file states
    std::optional<bool> suffices;
};

} // namespace bankwright
