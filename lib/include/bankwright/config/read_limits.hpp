// How much may a bank file hold before it is refused? Guards against files that are no bank files.
#pragma once

#include <cstddef>

namespace bankwright {

struct ReadLimits {
    std::size_t bytes = 1u << 20;    // of the whole file
    std::size_t nesting = 32;        // brackets in brackets, or names in one dotted key
    std::size_t parts = 2'000;       // over all sections, models and accepted findings included
    std::size_t part_lists = 50;     // named in `parts`
    std::size_t readings = 50;       // in a file of readings
    std::size_t log_entries = 5'000; // in the log of a hook-up
    std::size_t id_length = 200;     // bytes of one id
    std::size_t findings = 1'000;    // reported; what goes beyond is counted in one last finding
};

} // namespace bankwright
