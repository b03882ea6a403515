// Messages and numbers as a page for people shows them.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/units/quantities.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace bankwright::page {

// A message, lower case and without a full stop, as a sentence. A name stays as it is written.
std::string sentence(std::string_view message);

std::vector<std::string> sentences(std::vector<std::string_view> const& messages);

// A page travels: it names the file, and not the folders in which somebody keeps it.
std::string file_name(std::string_view path);

// Units with the signs that a page has room for: "4 m\u03a9", "25 \u00b0C", "16 mm\u00b2".
std::string with_unit_signs(std::string text);

// On one line, whatever the column's width.
std::string unbroken(std::string_view words);

// "A, B and C"
std::string all_of(std::vector<std::string> const& names);

std::string amperes(Current current); // "52.1 A", with its sign; what rounding has left is 0 A
std::string volts(Voltage voltage);   // as a meter shows it; "unknown" where there is none
std::string watts(Power power);
std::string milliohms(Resistance resistance);
std::string seconds(Duration duration); // "33 ms", "0.15 s"; longer ones as everywhere

} // namespace bankwright::page

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/page/html/sentences_inl.hpp"
#endif
