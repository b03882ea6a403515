// From text to document to bank, or the reason why not.
#pragma once

#include "bankwright/config/document.hpp"
#include "bankwright/config/read.hpp"
#include "bankwright/config/reader/read_file.hpp"
#include "bankwright/config/reader/read_part_lists.hpp"

#include <string_view>

namespace bankwright {
BANKWRIGHT_INLINE ReadResult read(std::string_view text, ReadLimits const& limits, PartListSource const& part_lists) {
    ReadResult result;
    internal::reader::Report report(limits);
    Document document;
    result.readable = internal::reader::parse(text, limits, document, report);
    if (result.readable)
        internal::reader::FileReader(limits, part_lists, result, report).read(document.root, document.duplicates);
    result.findings = report.take();
    if (!result.readable) result.bank = {};
    return result;
}

} // namespace bankwright
