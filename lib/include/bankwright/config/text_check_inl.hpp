// Size, UTF-8 and nesting of a text that is not yet parsed.
#pragma once

#include "bankwright/config/file_rules.hpp"
#include "bankwright/config/text_check.hpp"
#include "bankwright/text/utf8.hpp"

#include <algorithm>
#include <cstddef>
#include <string>
#include <utility>

#include <fmt/format.h>

namespace bankwright {
namespace internal::text_check {

inline Finding refusal(RuleInfo const& rule, std::string message, std::string help, Position at) {
    Finding finding;
    finding.rule = std::string(rule.id);
    finding.level = rule.level;
    finding.message = std::move(message);
    finding.help = std::move(help);
    finding.region = Region{at, {at.line, at.column + 1}};
    return finding;
}

// How deep is the text nested? Strings and comments are passed over. It need not be right on a text that is no TOML,
// but it must not say too little: the parser and the tree's own destruction recurse.
class NestingMeter {
public:
    explicit NestingMeter(std::string_view text) : text_(text) {}

    // Takes the character at `at` into account and returns how many bytes it passed over.
    std::size_t pass(std::size_t at) {
        switch (text_[at]) {
        case '"':
        case '\'':
            return string_length(at);
        case '#':
            return std::min(text_.find('\n', at), text_.size()) - at;
        case '[':
        case '{':
            ++brackets_;
            dots_ = 0;
            return 1;
        case ']':
        case '}':
            if (brackets_ > 0) --brackets_;
            return 1;
        case '.':
            ++dots_;
            return 1;
        case '\n':
        case '=':
        case ',':
            dots_ = 0;
            return 1;
        default:
            return 1;
        }
    }

    std::size_t depth() const { return brackets_ > dots_ ? brackets_ : dots_ + 1; }

private:
    std::size_t string_length(std::size_t at) const {
        char const quote = text_[at];
        std::string_view const three = quote == '"' ? "\"\"\"" : "'''";
        bool const is_long = text_.substr(at, 3) == three;
        std::size_t const mark = is_long ? 3 : 1;
        for (auto i = at + mark; i < text_.size(); ++i) {
            char const c = text_[i];
            if (quote == '"' && c == '\\')
                ++i;
            else if (!is_long && c == '\n')
                return i - at; // never closed: the parser will say so
            else if (c == quote && (!is_long || text_.substr(i, 3) == three))
                return i + mark - at;
        }
        return text_.size() - at;
    }

    std::string_view text_;
    std::size_t brackets_ = 0;
    std::size_t dots_ = 0;
};

} // namespace internal::text_check

BANKWRIGHT_INLINE std::optional<Finding> reason_to_refuse(std::string_view text, ReadLimits const& limits) {
    using namespace internal::text_check;
    if (text.size() > limits.bytes)
        return refusal(file_too_large,
                       fmt::format("the file has more than {} bytes; a bank file has fewer", limits.bytes),
                       "describe one bank in one file; is this a bank file at all?", {1, 1});
    if (text.substr(0, 2) == "\xFF\xFE" || text.substr(0, 2) == "\xFE\xFF")
        return refusal(file_syntax, "the text is UTF-16; a bank file is UTF-8", "save it again as UTF-8", {1, 1});

    text = without_mark(text);
    if (without_mark(text).size() != text.size())
        return refusal(file_syntax, "a second byte order mark at the beginning; allowed is one",
                       "save the file as UTF-8 without a mark", {1, 1});
    NestingMeter meter(text);
    Position place{1, 1};
    std::size_t counted = 0; // up to here the meter has looked
    for (std::size_t at = 0; at < text.size();) {
        std::size_t length = 1; // of most signs
        if (auto const byte = static_cast<unsigned char>(text[at]); byte == 0 || byte >= 0x80) {
            if (byte == 0)
                return refusal(file_syntax, "a NUL byte; a bank file is plain text", "is this a bank file at all?",
                               place);
            auto const point = first_code_point(text.substr(at));
            if (!point.valid)
                return refusal(file_syntax, fmt::format("byte 0x{:02X} is not UTF-8; a bank file is UTF-8", byte),
                               "save the file as UTF-8, or write the sign in plain letters: degC, ohm, mm2", place);
            length = point.length;
        }
        if (at == counted) {
            counted += meter.pass(at);
            if (meter.depth() > limits.nesting)
                return refusal(file_too_large, fmt::format("nested more than {} deep", limits.nesting),
                               "a bank file needs four levels at most", place);
        }
        if (text[at] == '\n')
            place = {place.line + 1, 1};
        else
            ++place.column;
        at += length;
    }
    return std::nullopt;
}

} // namespace bankwright
