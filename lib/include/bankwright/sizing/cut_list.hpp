// What to buy and to cut for a bank: conductors by size and color, terminals, heat-shrink, devices, screws and holes.
//
// What no file says is common practice, no source: a tenth of slack on every conductor, an inch of heat-shrink on every
// ring terminal, two No. 10 screws to a breaker, fuse, switch or busbar and four to a receptacle, a 1/8 in pilot hole
// for each, a hole of 1 in for a plug and receptacle, a quarter inch of conductor stripped for its terminals.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/units/dimensions.hpp"
#include "bankwright/units/price.hpp"
#include "bankwright/units/quantities.hpp"
#include "bankwright/units/wire_gauge.hpp"

#include <optional>
#include <string>
#include <vector>

namespace bankwright {

// One conductor, to be cut to a length.
struct Cut {
    std::string id;
    WireSize size;
    std::string color; // as the file says; empty where it does not
    Length run{};      // as the file says
    Length cut{};      // with slack
    std::string from;
    std::string to;
};

struct WireTotal {
    WireSize size;
    std::string color;
    int pieces = 0;
    Length length{}; // of the cuts
};

// An end of a conductor, and what it is landed on.
struct EndTotal {
    std::string what; // "ring terminal" or "stripped end"
    WireSize size;
    std::string on; // "battery post", "stud of a breaker or fuse", ...
    int count = 0;
};

struct Article {
    std::string what;   // "breaker", "receptacle and plug", ...
    std::string detail; // "60 A, 48 V, interrupts 5 kA"
    std::vector<std::string> parts;
    std::optional<Price> each;
};

struct BatteryTotal {
    std::string what; // "12 V agm, 100 Ah"
    int count = 0;
    std::optional<Mass> each;
    std::optional<Price> price; // likewise of each
    std::optional<Dimensions> size;
};

struct CutList {
    std::vector<Cut> cuts; // in the bank's order; those with a size and a length
    std::vector<WireTotal> wire;
    std::vector<EndTotal> ends;
    std::vector<Article> articles;
    std::vector<BatteryTotal> batteries;
    std::optional<Mass> battery_mass; // of all, if the file gives each
    std::vector<Price> prices;        // of all that states one, in the order of its currencies
    int without_price = 0;            // batteries and articles that state none; conductors never do
    int screws = 0;                   // No. 10, with as many pilot holes
    int receptacle_holes = 0;
    Length heat_shrink{};
    std::vector<std::string> not_cut; // conductors of which the file states no size or no length
};

CutList cut_list(Bank const& bank);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/sizing/cut_list_inl.hpp"
#endif
