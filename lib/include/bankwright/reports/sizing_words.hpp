// The lines of a sizing and of its cut list, as tables of words that every renderer lays out in its own way.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/reports/sized.hpp"
#include "bankwright/reports/table.hpp"

#include <string>
#include <vector>

namespace bankwright::sizing_words {

// "18 ft 9 in" or "5.70 m": a length that is worked out, in the units of the one that it comes from, and up to the next
// inch or centimeter, so that nothing is cut short.
std::string length(Length value, bool in_feet);
bool in_feet(Length run);          // was it measured so?
bool in_feet(CutList const& list); // its first conductor
std::string joined(std::vector<std::string> const& words);
std::string reasons(Findings const& findings);
struct Table {
    std::string title;
    std::vector<Row> rows; // the first is the heading
    std::vector<Align> aligned;
};
Table groups(Sized const& sized);
Table wire(CutList const& list);
Table cuts(CutList const& list);
Table ends(CutList const& list);
Table articles(CutList const& list);
std::string masses(CutList const& list); // "31.8 kg a battery, 95.4 kg in all"; empty where one is not stated
std::string prices(CutList const& list); // of all that states one; empty where nothing does
std::vector<Table> cut_tables(CutList const& list);
// Why no less, one line for each thing that was sized.
std::vector<std::string> no_less(SizingResult const& result);
std::string run_time(Sized const& sized);
inline constexpr char assumed[] =
    "lengths hold a tenth of slack; slack, heat-shrink (an inch on every ring terminal) and screws are common "
    "practice, without a source; rings to suit the posts and studs that you find";

} // namespace bankwright::sizing_words

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/sizing_words_inl.hpp"
#endif
