// The same bank with another number of parallel strings.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/linkage.hpp"

#include <optional>

namespace bankwright {

// How many strings of equal batteries the bank has, if it is one of which there can be more or fewer: strings joined at
// their two ends by conductors alone, with nothing else in between.
std::optional<int> string_count(Bank const& bank);

// Its first string, `count` times over: batteries and jumpers repeated under new names ("A-2"), links from string to
// string at both ends like its jumpers, and the main leads landed diagonally, plus at the first string and minus at the
// last. Throws std::invalid_argument for a bank of which string_count() says nothing, and for a count below 1.
Bank with_strings(Bank const& bank, int count);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/sizing/strings_inl.hpp"
#endif
