// From text to document, with what is wrong with it as text or as TOML reported.
#pragma once

#include "bankwright/config/document.hpp"
#include "bankwright/config/file_rules.hpp"
#include "bankwright/config/read_limits.hpp"
#include "bankwright/config/reader/read_report.hpp"
#include "bankwright/config/text_check.hpp"
#include "bankwright/findings/finding.hpp"
#include "bankwright/text/escape.hpp"

#include <string_view>
#include <utility>

#include <fmt/format.h>

namespace bankwright::internal::reader {

// What stopped the parser.
inline void report_problem(DocumentProblem const& problem, Report& report) {
    if (problem.repeats.empty())
        return report.add(file_syntax, {}, {}, problem.region, "not TOML: " + terminal_safe(problem.message),
                          "correct the text there; the rest of the file was not read");
    auto const name = in_backquotes(problem.repeats);
    if (problem.is_header)
        return report.add(file_duplicate_id, {}, problem.repeats, problem.region,
                          fmt::format("the table {} is there twice; allowed is once", name),
                          "put what is below it under the first; the rest of the file was not read");
    report.add(file_duplicate_id, {}, problem.repeats, problem.region,
               fmt::format("{} is there twice in one table; allowed is once", name),
               "remove one of the two; the rest of the file was not read");
}

// Reported, and false, where the text is none that can be read on from.
inline bool parse(std::string_view text, ReadLimits const& limits, Document& document, Report& report) {
    if (auto refusal = reason_to_refuse(text, limits)) {
        report.add(std::move(*refusal));
        return false;
    }
    document = parse_document(without_mark(text));
    if (!document.error) return true;
    for (auto const& duplicate : document.duplicates)
        report_problem(duplicate, report);
    report_problem(*document.error, report);
    return false;
}

// A file that is read by itself: `take(root, report)` where it can be read at all, which `readable` says.
template <class Take>
Findings read_alone(std::string_view text, ReadLimits const& limits, bool& readable, Take&& take) {
    Report report(limits);
    Document document;
    readable = parse(text, limits, document, report);
    if (readable) {
        for (auto const& duplicate : document.duplicates)
            report_problem(duplicate, report);
        take(document.root, report);
    }
    return report.take();
}

} // namespace bankwright::internal::reader
