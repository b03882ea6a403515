// Can this text be given to the parser at all? Size, encoding and nesting, looked at before anything is built from it.
#pragma once

#include "bankwright/config/read_limits.hpp"
#include "bankwright/findings/finding.hpp"
#include "bankwright/linkage.hpp"

#include <optional>
#include <string_view>

namespace bankwright {

// The text without a leading UTF-8 byte order mark.
inline std::string_view without_mark(std::string_view text) {
    return text.substr(0, 3) == "\xEF\xBB\xBF" ? text.substr(3) : text;
}

// The reason to refuse the text (file/too-large, file/syntax), with its place; none if it may be parsed.
std::optional<Finding> reason_to_refuse(std::string_view text, ReadLimits const& limits);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/config/text_check_inl.hpp"
#endif
