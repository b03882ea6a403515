// Findings for people: file:line:column, what is wrong, the line itself, found and allowed, what to do; a summary last.
#pragma once

#include "bankwright/findings/verdict.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/reports/style.hpp"

#include <span>
#include <string>
#include <string_view>

namespace bankwright {

// Whatever comes from a file is made safe for a terminal.
std::string findings_text(Verdicts const& verdicts, TextStyle const& style = {});

// One finding alone, without summary and cautions.
std::string finding_text(Finding const& finding, std::string const& file, std::string const& source,
                         TextStyle const& style = {});

// What a person must know before touching the bank, a line each: cautions.hpp.
std::string caution_text(std::span<std::string_view const> cautions, TextStyle const& style);

// Below an answer about a bank that has errors; empty where it has none.
std::string errors_first(std::string const& file, FindingCounts const& counts);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/findings_text_inl.hpp"
#endif
