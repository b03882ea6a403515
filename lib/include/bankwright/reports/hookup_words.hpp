// What does a meter's reading look like, and how is a mistake said in a few words?
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/reports/hooked_up.hpp"

#include <string>

namespace bankwright {

// As many decimals as the meter shows; "floating" where there is none.
std::string shown(std::optional<Voltage> const& reading, HookupOptions const& options);

// "land", "take out fuse"
std::string in_words(HookupAction action, bool undo);

// "A or B is the wrong way round; J1 is on A- instead of A+": at most `most` of them, and how many more there are.
std::string said(WrongReading const& wrong, std::size_t most);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/hookup_words_inl.hpp"
#endif
