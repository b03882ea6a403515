// From a hook-up's log to the text of its file; and by which marks it knows its bank again.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/bank/hookup_log.hpp"
#include "bankwright/linkage.hpp"

#include <string>
#include <vector>

namespace bankwright {

// read_log() gives back what was written, but for marks and times that are no UTF-8.
std::string write(HookupLog const& log);

// By part, in the order of the sections, and one of "[system]".
PartMarks part_marks(Bank const& bank);

// Parts that are not as they were, that are new, and that are gone; empty where the log has no marks.
std::vector<std::string> changed_since(PartMarks const& marks, Bank const& bank);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/config/write_log_inl.hpp"
#endif
