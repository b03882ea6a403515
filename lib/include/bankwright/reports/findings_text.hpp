// Findings for people: file:line:column, what is wrong, the line itself, found and allowed, what to do; a summary last.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/reports/style.hpp"
#include "bankwright/findings/verdict.hpp"

#include <string>

namespace bankwright {

// Whatever comes from a file is made safe for a terminal.
std::string findings_text(Verdicts const& verdicts, TextStyle const& style = {});

// One finding alone, without summary and cautions.
std::string finding_text(Finding const& finding, std::string const& file, std::string const& source,
                         TextStyle const& style = {});

// What a person must know before touching the bank, a line each.
std::string caution_text(TextStyle const& style);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/findings_text_inl.hpp"
#endif
