// What was read while a bank was put together: the answers to the questions of its hook-up sheet, in the order in which
// they were given, as they were written down.
#pragma once

#include "bankwright/units/print.hpp"
#include "bankwright/units/quantities.hpp"

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace bankwright {

// At which place of the sheet.
enum class LogWhen {
    alone, // a battery, before anything is landed on it
    run,   // with an ohmmeter, as DeadCheckKind has them
    loop,
    apart,
    load,
    hull,
    before, // across the gap that a step is about to close
    done,   // the step has been made, and nothing is read after it
    after,  // the step has been made, and this is read
    also,   // between two other terminals, to find out why a reading was wrong
};
inline constexpr std::array<std::string_view, 10> log_when_words{"alone", "run",    "loop", "apart", "load",
                                                                 "hull",  "before", "done", "after", "also"};
constexpr std::string_view name(LogWhen when) { return log_when_words[static_cast<std::size_t>(when)]; }

struct AsExpected {}; // "ok"
struct NoPath {};     // "OL": an ohmmeter's word for no continuity, and here a voltmeter's for floating
using Shown = std::variant<AsExpected, NoPath, Voltage, Resistance>;

// As a log has it: "12.7 V", "0.3 ohm", "OL", "ok".
inline std::string written(Shown const& shown) {
    if (std::holds_alternative<AsExpected>(shown)) return "ok";
    if (std::holds_alternative<NoPath>(shown)) return "OL";
    if (auto const* volts = std::get_if<Voltage>(&shown)) return print_exact(*volts);
    return print_exact(std::get<Resistance>(shown));
}

struct LogEntry {
    LogWhen when = LogWhen::alone;
    std::string part; // that the sheet's line is about; empty for `also`
    std::string red;  // terminals, of `also`
    std::string black;
    Shown reads{};
    std::string time; // as written; empty: not said
};

// The bank that a log was begun on: a short mark for each part, that changes when anything about the part does.
using PartMarks = std::vector<std::pair<std::string, std::string>>;

struct HookupLog {
    std::string name;                 // for people
    PartMarks marks;                  // empty: not said
    std::optional<double> of_reading; // the meter, as HookupOptions has it
    std::optional<int> digits;
    std::optional<Voltage> resolution;
    std::vector<LogEntry> entries;
};

} // namespace bankwright
