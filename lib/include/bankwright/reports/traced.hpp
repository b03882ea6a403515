// What a renderer of a trace is given.
#pragma once

#include "bankwright/analyses/trace.hpp"
#include "bankwright/bank/reading_sheet.hpp"

#include <string>

namespace bankwright {

struct Traced {
    std::string file; // as the user named it
    ReadingSheet sheet;
    TraceResult result;
};

} // namespace bankwright
