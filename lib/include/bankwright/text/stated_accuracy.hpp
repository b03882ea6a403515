// How far may a meter be off, as its maker states it: "0.5 % + 2 digits"?
#pragma once

#include "bankwright/text/parse_number.hpp"

#include <optional>
#include <string_view>

namespace bankwright {

struct StatedAccuracy {
    double of_reading = 0.0; // share: 0.5 % is 0.005
    int digits = 0;          // counts of the last digit
};

// None where it says something else, more than 10 % or more than 100 digits: such a meter tells nothing.
inline std::optional<StatedAccuracy> parse_stated_accuracy(std::string_view text) {
    constexpr double most_percent = 10.0;
    constexpr double most_digits = 100.0;
    auto const skip_blanks = [&] {
        while (!text.empty() && text.front() == ' ')
            text.remove_prefix(1);
    };
    auto const take = [&](std::string_view word) {
        skip_blanks();
        if (text.substr(0, word.size()) != word) return false;
        text.remove_prefix(word.size());
        return true;
    };
    skip_blanks();
    auto const percent = parse_number(text);
    if (!percent || !(*percent >= 0.0 && *percent <= most_percent) || !take("%")) return std::nullopt;
    StatedAccuracy accuracy{*percent / 100.0, 0};
    if (take("+")) {
        skip_blanks();
        auto const count = parse_number(text);
        if (!count || !(*count >= 0.0 && *count <= most_digits) || *count != static_cast<int>(*count))
            return std::nullopt;
        if (!take("digits") && !take("digit") && !take("counts") && !take("count")) return std::nullopt;
        accuracy.digits = static_cast<int>(*count);
    }
    skip_blanks();
    return text.empty() ? std::optional(accuracy) : std::nullopt;
}

} // namespace bankwright
