// From text to document to bank, or the reason why not.
#pragma once

#include "bankwright/config/document.hpp"
#include "bankwright/config/read.hpp"
#include "bankwright/config/read_file_inl.hpp"
#include "bankwright/config/text_check.hpp"

#include <string>
#include <string_view>
#include <utility>

#include <fmt/format.h>

namespace bankwright {
namespace reading {

// What stopped the parser.
inline void report_problem(DocumentProblem const& problem, Report& report) {
    if (problem.repeats.empty())
        return report.add(file_syntax, {}, {}, problem.region, "not TOML: " + terminal_safe(problem.message),
                          "mend the text there; the rest of the file was not read");
    auto const name = in_backquotes(problem.repeats);
    if (problem.is_header)
        return report.add(file_duplicate_id, {}, problem.repeats, problem.region,
                          fmt::format("the table {} stands twice; a table stands once", name),
                          "put what is below it under the first; the rest of the file was not read");
    report.add(file_duplicate_id, {}, problem.repeats, problem.region,
               fmt::format("{} stands twice in one table; a key stands once", name),
               "take one of the two out; the rest of the file was not read");
}

} // namespace reading

BANKWRIGHT_INLINE ReadResult read(std::string_view text, ReadLimits const& limits) {
    ReadResult result;
    if (auto refusal = reason_to_refuse(text, limits)) {
        result.findings.push_back(std::move(*refusal));
        result.readable = false;
        return result;
    }
    auto const document = parse_document(without_mark(text));
    reading::Report report(limits);
    if (document.error) {
        result.readable = false;
        for (auto const& duplicate : document.duplicates)
            reading::report_problem(duplicate, report);
        reading::report_problem(*document.error, report);
    } else {
        reading::FileReader(limits, result, report).read(document.root, document.duplicates);
    }
    result.findings = report.take();
    if (!result.readable) result.bank = {};
    return result;
}

} // namespace bankwright
