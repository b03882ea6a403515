// From a bank to the text of its file, in one canonical form: what a program makes can be kept, compared and read
// again.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/linkage.hpp"

#include <string>

namespace bankwright {

// read(write(bank)).bank == bank for every bank that a file can hold, to the last bit, and write(read(text).bank) is
// the same for every text of the same bank. Sections stand in a fixed order, parts in the author's; models are
// resolved, comments gone. Strings must be UTF-8. Throws std::invalid_argument for a quantity that is infinite or no
// number: no file can hold it.
std::string write(Bank const& bank);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/config/write_inl.hpp"
#endif
