// At which moment an answer holds, as its heading says it.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/network/moment.hpp"

#include <string>

namespace bankwright {

// "at 40 A", "with every load off"; empty: as the file describes.
std::string in_words(Moment const& moment);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/moment_words_inl.hpp"
#endif
