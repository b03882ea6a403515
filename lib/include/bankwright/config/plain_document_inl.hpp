// Body of plain_document.hpp.
#pragma once

#include "bankwright/config/plain_document.hpp"
#include "bankwright/config/reader/read_document.hpp"

#include <utility>

namespace bankwright {

BANKWRIGHT_INLINE PlainDocument read_plain_document(std::string_view text, ReadLimits const& limits) {
    PlainDocument read;
    read.findings =
        internal::reader::read_alone(text, limits, read.readable, [&](DocumentValue& root, internal::reader::Report&) {
            read.root = std::move(root);
        });
    return read;
}

} // namespace bankwright
