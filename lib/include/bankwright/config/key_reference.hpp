// The table of keys as a page to read.
#pragma once

#include "bankwright/linkage.hpp"

#include <string>

namespace bankwright {

// Markdown: for each section its terminals, what a part needs, and every key with its value, default and meaning.
std::string key_reference();

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/config/key_reference_inl.hpp"
#endif
