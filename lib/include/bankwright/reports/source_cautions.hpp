// What must be known of each source before the hand goes to its leads, and when all is wired? By what it is: a charger
// ashore, an alternator, solar panels, a converter (common practice, no source).
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/linkage.hpp"

#include <string>
#include <vector>

namespace bankwright {

// Before anything is landed or removed.
std::vector<std::string> sources_off(Bank const& bank);

// When all is wired and every reading has been right.
std::vector<std::string> sources_on(Bank const& bank);

// While they charge.
std::vector<std::string> sources_at_work(Bank const& bank);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/source_cautions_inl.hpp"
#endif
