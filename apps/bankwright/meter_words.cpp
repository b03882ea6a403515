#include "meter_words.hpp"

#include "bankwright/text/escape.hpp"
#include "bankwright/text/parse_number.hpp"
#include "bankwright/units/parse.hpp"

#include <string_view>

using namespace bankwright;

namespace {

void skip_blanks(std::string_view& text) {
    while (!text.empty() && text.front() == ' ')
        text.remove_prefix(1);
}

bool skip(std::string_view& text, std::string_view word) {
    skip_blanks(text);
    if (text.substr(0, word.size()) != word) return false;
    text.remove_prefix(word.size());
    return true;
}

} // namespace

std::string read_meter(std::string const& typed, HookupOptions& options) {
    constexpr double most_percent = 10.0;
    constexpr double most_digits = 100.0;
    auto const problem =
        "`" + terminal_safe(typed) + "` is no accuracy of a meter; expected one such as \"0.5 % + 2 digits\"";
    std::string_view rest = typed;
    skip_blanks(rest);
    auto const percent = parse_number(rest);
    if (!percent || !(*percent >= 0.0 && *percent <= most_percent) || !skip(rest, "%")) return problem;
    double digits = 0.0;
    if (skip(rest, "+")) {
        skip_blanks(rest);
        auto const count = parse_number(rest);
        if (!count || !(*count >= 0.0 && *count <= most_digits) || *count != static_cast<int>(*count)) return problem;
        digits = *count;
        if (!skip(rest, "digit")) return problem;
        if (!rest.empty() && rest.front() == 's') rest.remove_prefix(1);
    }
    skip_blanks(rest);
    if (!rest.empty()) return problem;
    options.of_reading = *percent / 100.0;
    options.digits = static_cast<int>(digits);
    return {};
}

std::string read_resolution(std::string const& typed, HookupOptions& options) {
    auto const digit = parse<Voltage>(typed);
    if (!digit.value) return digit.problem;
    if (!(digit.value->value() > 0.0 && digit.value->value() <= 10.0))
        return "`" + terminal_safe(typed) + "` is out of range; above 0 V, to 10 V";
    options.resolution = *digit.value;
    return {};
}

std::string read_charge_within(std::string const& typed, HookupOptions& options) {
    auto const within = parse<StateOfCharge>(typed);
    if (!within.value) return within.problem;
    if (within.value->value() < 0.0 || within.value->value() > 1.0)
        return "`" + terminal_safe(typed) + "` is out of range; a share is 0 % to 100 %";
    options.charge_within = *within.value;
    return {};
}
