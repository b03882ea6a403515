// What does a text say as TOML, whatever it is meant to be? The reader's own parser, within the reader's own limits.
#pragma once

#include "bankwright/config/document.hpp"
#include "bankwright/config/read_limits.hpp"
#include "bankwright/findings/finding.hpp"
#include "bankwright/linkage.hpp"

#include <string_view>

namespace bankwright {

struct PlainDocument {
    DocumentValue root;    // empty unless readable
    Findings findings;     // why it is not TOML within the limits, or which keys stand twice
    bool readable = false; // it is TOML; with findings, a key that stands twice is there once
};

PlainDocument read_plain_document(std::string_view text, ReadLimits const& limits = {});

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/config/plain_document_inl.hpp"
#endif
