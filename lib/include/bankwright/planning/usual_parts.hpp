// What can be had in any shop? Part lists that the library carries with it: invented nameplates, of no maker.
//
// They are data/examples/parts/*.toml, word for word (tests/structure/make_part_lists.py). None states a price.
#pragma once

#include "bankwright/config/part_list.hpp"
#include "bankwright/linkage.hpp"

#include <vector>

namespace bankwright {

std::vector<PartListText> usual_part_lists();

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/planning/usual_parts_inl.hpp"
#endif
