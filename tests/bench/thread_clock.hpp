// How long did this thread compute?
#pragma once

#include <ctime>

namespace bench {

inline double processor_seconds() { // of this thread
    timespec t;
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &t);
    return static_cast<double>(t.tv_sec) + 1e-9 * static_cast<double>(t.tv_nsec);
}

} // namespace bench
