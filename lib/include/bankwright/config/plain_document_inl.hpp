// Body of plain_document.hpp.
#pragma once

#include "bankwright/config/plain_document.hpp"
#include "bankwright/config/reader/read_document.hpp"

#include <utility>

namespace bankwright {

BANKWRIGHT_INLINE PlainDocument read_plain_document(std::string_view text, ReadLimits const& limits) {
    PlainDocument read;
    internal::reader::Report report(limits);
    Document document;
    read.readable = internal::reader::parse(text, limits, document, report);
    if (read.readable) {
        for (auto const& duplicate : document.duplicates)
            internal::reader::report_problem(duplicate, report);
        read.root = std::move(document.root);
    }
    read.findings = report.take();
    return read;
}

} // namespace bankwright
