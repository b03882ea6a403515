#include "typed_reading.hpp"

#include "bankwright/config/reading_keys.hpp"
#include "bankwright/text/escape.hpp"
#include "bankwright/units/parse.hpp"

#include <algorithm>
#include <cctype>

using namespace bankwright;

namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }

std::string lower(std::string_view text) {
    std::string out(text);
    for (auto& c : out)
        c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    return out;
}

// The unit as the library spells it; empty where it is none.
std::string unit_of(std::string const& typed, bool is_ohms) {
    if (typed.empty()) return is_ohms ? "ohm" : "V";
    for (auto const* volts : {"v", "volt", "volts", "vdc", "v dc"})
        if (typed == volts) return "V";
    for (auto const* ohms : {"ohm", "ohms", "r", "\u03C9", "\u03A9", "\u2126"}) // small and capital omega, ohm sign
        if (typed == ohms) return "ohm";
    if (typed == "mv") return "mV";
    if (typed == "mohm") return "mohm";
    if (typed == "kohm" || typed == "k") return "kohm";
    return {};
}

} // namespace

TypedReading typed_reading(std::string_view typed, bool is_ohms) {
    auto const words = lower(typed);
    if (words == "ok" || words == "yes") return {AsExpected{}, {}};
    for (auto const* none : {"ol", "o.l", "open", "floating", "nothing"})
        if (words == none) return {NoPath{}, {}};
    auto const complaint = std::string("  `") + terminal_safe(typed) + "` is no reading; type such as " +
                           (is_ohms ? "`0.3`, `0.3 ohm`, `OL` or `ok`" : "`12.7`, `12.7 V`, `OL` or `ok`");
    auto end = words.find_first_not_of("+-0123456789.,");
    if (end == std::string::npos) end = words.size();
    auto number = words.substr(0, end);
    auto unit = words.substr(end);
    unit.erase(0, std::min(unit.find_first_not_of(' '), unit.size()));
    if (number.find('.') == std::string::npos && std::count(number.begin(), number.end(), ',') == 1)
        number[number.find(',')] = '.'; // as half the world writes it
    if (!number.empty() && number.front() == '+') number.erase(0, 1);
    bool const has_digit = std::any_of(number.begin(), number.end(), is_digit);
    auto const spelled = unit_of(unit, is_ohms);
    if (!has_digit || spelled.empty()) return {{}, complaint};
    auto const text = number + " " + spelled;
    if (spelled.back() == 'V') {
        auto const volts = parse<Voltage>(text);
        if (!volts.value || !keys::shown_volts.holds(volts.value->value())) return {{}, complaint};
        if (is_ohms) return {{}, "  that is a voltage; the meter on ohms is asked for"};
        return {*volts.value, {}};
    }
    auto const ohms = parse<Resistance>(text);
    if (!ohms.value || ohms.value->value() < 0.0) return {{}, complaint};
    if (!is_ohms) return {{}, "  that is a resistance; the meter on DC volts is asked for"};
    return {*ohms.value, {}};
}
