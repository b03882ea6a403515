// Size, UTF-8 and nesting of a text that is not yet parsed.
#pragma once

#include "bankwright/config/file_rules.hpp"
#include "bankwright/config/text_check.hpp"
#include "bankwright/text/utf8.hpp"

#include <cstddef>
#include <string>
#include <utility>

#include <fmt/format.h>

namespace bankwright {
namespace text_check {

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
        char const c = text_[at];
        if (c == '"' || c == '\'') return string_length(at);
        if (c == '#') {
            auto const end = text_.find('\n', at);
            return (end == std::string_view::npos ? text_.size() : end) - at;
        }
        if (c == '[' || c == '{') ++brackets_;
        if ((c == ']' || c == '}') && brackets_ > 0) --brackets_;
        if (c == '.') ++dots_;
        if (c == '\n' || c == '=' || c == ',' || c == '{' || c == '[') dots_ = 0;
        return 1;
    }

    std::size_t depth() const { return brackets_ > dots_ ? brackets_ : dots_ + 1; }

private:
    std::size_t string_length(std::size_t at) const {
        char const quote = text_[at];
        bool const is_long = text_.substr(at, 3) == std::string(3, quote);
        std::string const closing(is_long ? 3 : 1, quote);
        for (auto i = at + closing.size(); i < text_.size(); ++i) {
            if (quote == '"' && text_[i] == '\\')
                ++i;
            else if (!is_long && text_[i] == '\n')
                return i - at; // never closed: the parser will say so
            else if (text_.compare(i, closing.size(), closing) == 0)
                return i + closing.size() - at;
        }
        return text_.size() - at;
    }

    std::string_view text_;
    std::size_t brackets_ = 0;
    std::size_t dots_ = 0;
};

} // namespace text_check

BANKWRIGHT_INLINE std::optional<Finding> reason_to_refuse(std::string_view text, ReadLimits const& limits) {
    using namespace text_check;
    if (text.size() > limits.bytes)
        return refusal(file_too_large,
                       fmt::format("the file has more than {} bytes; a bank file has fewer", limits.bytes),
                       "describe one bank in one file; is this a bank file at all?", {1, 1});
    if (text.substr(0, 2) == "\xFF\xFE" || text.substr(0, 2) == "\xFE\xFF")
        return refusal(file_syntax, "the text is UTF-16; a bank file is UTF-8", "save it again as UTF-8", {1, 1});

    text = without_mark(text);
    NestingMeter meter(text);
    Position place{1, 1};
    std::size_t counted = 0; // up to here the meter has looked
    for (std::size_t at = 0; at < text.size();) {
        if (text[at] == '\0')
            return refusal(file_syntax, "a NUL byte; a bank file is plain text", "is this a bank file at all?", place);
        bool const is_plain = static_cast<unsigned char>(text[at]) < 0x80; // most of it is
        auto const length = is_plain ? 1 : first_code_point(text.substr(at)).length;
        if (!is_plain && !first_code_point(text.substr(at)).valid)
            return refusal(
                file_syntax,
                fmt::format("byte 0x{:02X} is not UTF-8; a bank file is UTF-8", static_cast<unsigned char>(text[at])),
                "save the file as UTF-8, or write the sign in plain letters: degC, ohm, mm2", place);
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
