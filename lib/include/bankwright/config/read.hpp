// From the text of a bank file to a bank: everything that is wrong with the file is found at once, and never thrown.
#pragma once

#include "bankwright/config/part_list.hpp"
#include "bankwright/config/read_limits.hpp"
#include "bankwright/config/read_result.hpp"
#include "bankwright/linkage.hpp"

#include <string_view>

namespace bankwright {

// Reads one bank file. Lines and columns are 1-based, columns count code points, a byte order mark is passed over.
// Without a source a file that names part lists gets a finding for each.
ReadResult read(std::string_view text, ReadLimits const& limits = {}, PartListSource const& part_lists = {});

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/config/read_inl.hpp"
#endif
