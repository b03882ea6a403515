// A reading of a half-made bank is wrong: which mistake explains it and all that was read before, and which reading
// would tell more? Bayes' theorem over the suspects, on the networks as they stood at each reading.
//
// `trace` asks the same of a bank that is whole, under any load; here nothing flows, every state on the way counts, and
// a lead may be in the hand that is about to land it.
#pragma once

#include "bankwright/analyses/hookup/hookup_meter.hpp"
#include "bankwright/analyses/hookup/suspected_mistakes.hpp"
#include "bankwright/analyses/hookup_steps.hpp"
#include "bankwright/linkage.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace bankwright {

// One thing that was read.
struct Evidence {
    Made made;
    int pending = -1; // its gap was read: the probes are where its ends are about to be
    int red = 0;      // nodes
    int black = 0;
    bool is_ohms = false;
    double reads = 0.0;                     // [V], or 1 where an ohmmeter found a path, else 0
    std::vector<std::pair<int, int>> clips; // joined while it was read
    std::vector<int> in_hand;               // connections whose loose ends were read
};

// Mistakes that no reading tells apart; empty: the reading itself is at fault.
struct MistakeChance {
    std::vector<Mistake> alike; // the likelier first
    double probability = 0.0;
};

struct ProbeAsked {
    struct Expected {
        std::size_t chance = 0; // number of the MistakeChance
        Voltage reads{};
        bool floats = false; // it reads about 0 V because the leads have no path between them
        bool joined = false; // of an ohmmeter
    };
    std::string red;
    std::string black;
    bool is_ohms = false;
    std::vector<Expected> expected;
    double bits = 0.0;
};

struct MistakeFound {
    std::vector<MistakeChance> chances; // the likeliest first
    std::optional<ProbeAsked> next;     // none: it is named, or no reading tells more
};

class MistakeSearch {
public:
    // `emf_spread` is one standard deviation of what is known of each battery [V].
    MistakeSearch(Bank const& bank, PartialBank const& partial, HookupOptions const& options,
                  std::vector<double> emf_spread);

    // The last of `evidence` and those of the same state as it are weighed first.
    MistakeFound search(std::vector<Evidence> const& evidence, std::vector<SuspectedMistake> const& suspects) const;

    Places const& places() const { return places_; }

private:
    class Weighing;
    PartialBank const& partial_;
    HookupMeter meter_;
    std::vector<double> emf_spread_;
    Places places_;
    std::vector<std::pair<int, int>> loads_;
};

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/analyses/hookup/mistake_search_inl.hpp"
#endif
