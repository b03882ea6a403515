// What lies within reach of one hand and of a meter's leads? The places on a boat: battery box, bow, stern, helm.
//
// A meter's leads are about a meter long (common practice, no source). Parts that a conductor shorter than 1.5 m joins
// lie in one place, the two ends of a longer one in two; a receptacle and its plug lie where they meet. The key `place`
// of a part overrules: parts of one name are in one place, parts of two names never are.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/linkage.hpp"

#include <optional>
#include <string>
#include <unordered_map>
#include <utility>
#include <vector>

namespace bankwright {

inline constexpr double one_place = 1.5; // [m] a conductor as long as this or longer has its ends in two

struct Places {
    std::vector<std::string> names;                        // as the file says: "bow"; else by a part there: "by troll"
    std::vector<int> of;                                   // by terminal, in the order of terminals_of()
    std::unordered_map<std::string, int> at;               // by the terminal's name
    std::vector<std::vector<std::pair<int, double>>> ways; // by place: along a conductor to which, and how far [m]

    bool together(int a, int b) const { // two terminals
        return of[static_cast<std::size_t>(a)] == of[static_cast<std::size_t>(b)];
    }
};

Places places_of(Bank const& bank);

// As written, else from size and resistance. None: a jumper is then taken as short, a cable as longer than one_place.
std::optional<Length> length_of(Run const& run, System const& system);

// By place: can the far end of a conductor that starts at that one come there? Along the bank's conductors, and
// a quarter more, as they do not run straight; one of unknown length comes anywhere if it is a cable.
std::vector<char> within_reach(Places const& places, int start, Run const& run, PartKind kind, System const& system);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/wiring/places_inl.hpp"
#endif
