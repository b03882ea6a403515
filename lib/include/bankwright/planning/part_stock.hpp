// Which batteries, breakers, fuses and fittings are there to choose from? The models of part lists, sorted by what
// their keys say that they are.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/config/part_list.hpp"
#include "bankwright/findings/finding.hpp"
#include "bankwright/findings/source_text.hpp"
#include "bankwright/linkage.hpp"

#include <vector>

namespace bankwright {

// Each part bears the name of its model as its id. From the smallest within each kind.
struct PartStock {
    std::vector<Battery> batteries;
    std::vector<ProtectiveDevice> breakers;
    std::vector<ProtectiveDevice> fuses;
    std::vector<Connector> connectors;
    std::vector<Switch> switches;
    std::vector<Busbar> busbars;
    Conductor wire;                  // insulation and tin of what all conductors are made of
    Findings findings{};             // what is wrong with the lists
    std::vector<SourceText> texts{}; // that they point into
};

// A model is a battery by its `capacity`; a breaker or fuse by `interrupts`, `class` or `trips` (a fuse where its class
// is that of a fuse, or its name begins with "fuse"); a receptacle by `contact` or `max_size`; a busbar by `studs`; a
// wire by `insulation`; a switch by a `rating` and none of these. Of a kind that the lists have none of, the usual ones
// are taken (usual_parts.hpp).
PartStock part_stock(std::vector<PartListText> const& lists);

// The usual parts alone.
PartStock usual_parts();

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/planning/part_stock_inl.hpp"
#endif
