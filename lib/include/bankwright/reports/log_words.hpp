// What is said while a bank is hooked up: the question, go or stop in one line, the cause, and what to read next. Names
// stand in backquotes.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/reports/logged.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace bankwright::log_words {

// One line of the sheet, as it is asked.
struct Asked {
    std::string act;                // "land `J1`: `B-` first, then `A+` (6 AWG, 12 in)"; empty: nothing to be done
    std::string read;               // "red on `A+`, black on `B-`"; empty: nothing to be read
    std::string expected;           // "expect 12.8 V (12.7 V to 12.9 V)", "floating", "less than 1 ohm"
    std::vector<std::string> wrong; // what else it may read, and why
};

// Each question of the sheet, once for all.
std::vector<Asked> asked(LoggedHookup const& logged);

// "go", or "stop: 0.02 V, where 25.6 V is expected (25.2 V to 26.0 V)".
std::string verdict(LoggedHookup const& logged, std::vector<Asked> const& asked, std::size_t question);

// "12.7 V", "OL", "as expected".
std::string said(Shown const& shown, HookupOptions const& options);

std::string said(Mistake const& mistake);

// "96 %: `J1` is on `C+`, not on `A+`; or ...", the likeliest first; empty where nothing is likely.
std::vector<std::string> causes(LoggedHookup const& logged);

// "red on `A+`, black on `A-`", and what each cause would read there.
struct Further {
    std::string read;
    std::vector<std::string> expected;
    bool is_ohms = false;
};
std::optional<Further> further(LoggedHookup const& logged);

// What to do once the cause is named.
std::string put_right(LoggedHookup const& logged);

// "the bank file has changed since: `main`, `CB`"; empty where it has not.
std::string changed(LoggedHookup const& logged);

} // namespace bankwright::log_words

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/log_words_inl.hpp"
#endif
