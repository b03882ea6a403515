// Body of trace_text.hpp.
#pragma once

#include "bankwright/reports/cautions.hpp"
#include "bankwright/reports/findings_text.hpp"
#include "bankwright/reports/tally.hpp"
#include "bankwright/reports/trace_text.hpp"
#include "bankwright/text/escape.hpp"
#include "bankwright/units/print.hpp"

#include <algorithm>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace bankwright {
namespace internal::trace_words {

// "A, B or C"
inline std::string any_of(std::vector<std::string> const& names) {
    std::string out;
    for (std::size_t n = 0; n < names.size(); ++n)
        out += (n == 0 ? "" : n + 1 == names.size() ? " or " : ", ") + names[n];
    return out;
}

// In the words that fit the part.
inline std::string open(Fault const& fault) {
    auto const part = "`" + fault.part + "`";
    switch (fault.of) {
    case PartKind::breaker:
        return part + " is tripped, switched off or broken";
    case PartKind::fuse:
        return part + " is blown or not in its holder";
    case PartKind::switch_:
        return part + " is off or broken";
    case PartKind::selector:
        return part + " is off, on the other bank or broken";
    case PartKind::relay:
        return part + " does not close";
    case PartKind::shunt:
        return part + " is loose on a stud or broken";
    case PartKind::motor:
    case PartKind::load:
        return part + " draws nothing: look at its own switch and fuse";
    default:
        return fault.detail == "both poles" ? "the plug of " + part + " is not home"
                                            : part + " makes no contact (" + fault.detail + ")";
    }
}

inline std::string of(Fault const& fault) {
    auto const in_brackets = fault.detail.empty() ? std::string() : " (" + fault.detail + ")";
    auto part = "`" + fault.part + "`";
    switch (fault.kind) {
    case FaultKind::reversed:
        return part + " is turned around";
    case FaultKind::dead:
        return part + " is dead: it gives no voltage";
    case FaultKind::dead_cell:
        return part + " has a dead cell";
    case FaultKind::shorted_cell:
        return part + " has a shorted cell";
    case FaultKind::low:
        return part + " is low" + in_brackets;
    case FaultKind::moved:
        return part + " is on " + fault.on + " instead of " + fault.instead_of;
    case FaultKind::missing:
        return part + " is missing or broken";
    case FaultKind::resistive:
        return part +
               (fault.of == PartKind::battery ? " is worn: it sags under load" : " or one of its joints resists") +
               in_brackets;
    case FaultKind::open:
        return open(fault);
    case FaultKind::exchanged:
        return "the two leads on " + (fault.detail.empty() ? std::string() : "the " + fault.detail + " of ") + part +
               " are swapped";
    case FaultKind::stalled:
        return part + " draws more than it should" + (fault.of == PartKind::motor ? ": stalled, or weeds" : "") +
               in_brackets;
    }
    return part;
}

inline std::string of(std::vector<Fault> const& faults) {
    if (faults.empty()) return "all is as described";
    std::string words;
    for (auto const& fault : faults)
        words += (words.empty() ? "" : ", and ") + of(fault);
    return words;
}

// What no reading tells apart, a line each. Hypotheses that differ only in where one end is are one line:
// "`J1` is on C+, CB.line or CB.load instead of B-".
inline std::vector<std::string> lines_of(Diagnosis const& diagnosis) {
    struct Line {
        std::vector<Fault> faults;
        std::vector<std::string> places; // of the first end that is moved
    };
    auto const first_moved = [](std::vector<Fault>& faults) {
        return std::find_if(faults.begin(), faults.end(),
                            [](Fault const& fault) { return fault.kind == FaultKind::moved; });
    };
    std::vector<Line> lines;
    std::map<std::string, std::size_t> known; // by what they say but for the place
    auto const add = [&](std::vector<Fault> faults) {
        auto const moved = first_moved(faults);
        std::vector<std::string> places;
        if (moved != faults.end()) places.push_back(std::exchange(moved->on, {}));
        auto const [at, is_new] = known.emplace(of(faults), lines.size());
        if (is_new) lines.push_back({faults, {}});
        auto& all = lines[at->second].places;
        all.insert(all.end(), places.begin(), places.end());
    };
    add(diagnosis.faults);
    for (auto const& faults : diagnosis.alike)
        add(faults);
    std::vector<std::string> words;
    for (auto& line : lines) {
        if (!line.places.empty()) first_moved(line.faults)->on = any_of(line.places);
        words.push_back(of(line.faults));
    }
    return words;
}

inline std::string of(Moment const& moment) {
    if (moment.loads == LoadsAre::at_rest)
        return moment.converters ? "with every load off" : "with every load and converter off";
    if (moment.loads == LoadsAre::constant_current) return fmt::format("while {} flows", print(moment.current));
    if (moment.throttle) return fmt::format("with the motor at {}", print(*moment.throttle));
    return "with the motor and loads on, as the file has them";
}

// "93 %", and never a certainty that no reading gives.
inline std::string chance(double probability) {
    if (probability > 0.995) return "over 99 %";
    if (probability < 0.01) return "under 1 %";
    return fmt::format("{:.0f} %", 100.0 * probability);
}

inline constexpr std::size_t most_shown = 5; // diagnoses, and what is alike

inline std::string hypotheses(std::vector<Diagnosis> const& diagnoses) {
    std::string out;
    for (std::size_t d = 0; d < std::min(diagnoses.size(), most_shown); ++d) {
        auto const lines = lines_of(diagnoses[d]);
        for (std::size_t n = 0; n < std::min(lines.size(), most_shown); ++n)
            out += fmt::format("{:>9}  {}\n", n == 0 ? chance(diagnoses[d].probability) : n == 1 ? "or" : "", lines[n]);
        if (lines.size() > most_shown)
            out +=
                fmt::format("{:>9}  {} more that no voltage reading can tell from it\n", "", lines.size() - most_shown);
    }
    if (diagnoses.size() > most_shown) {
        double rest = 0.0;
        for (std::size_t d = most_shown; d < diagnoses.size(); ++d)
            rest += diagnoses[d].probability;
        out += fmt::format("{:>9}  {}, each less likely\n", chance(rest),
                           counted(static_cast<int>(diagnoses.size() - most_shown), "other"));
    }
    return out;
}

// "by bow", "at: battery box", "from bow to battery box"
inline std::string where(std::vector<std::string> const& places) {
    std::string out;
    for (auto const& place : places) {
        bool const is_by = place.rfind("by ", 0) == 0;
        out += (out.empty() ? "" : " and ") + (is_by ? place : "in place \"" + place + "\"");
    }
    return terminal_safe(out);
}

inline std::string doubts(std::vector<DoubtfulReading> const& doubtful) {
    std::string out;
    for (auto const& one : doubtful)
        out += fmt::format("reading {} is doubted, {}: {}\n", one.reading + 1, name(one.why), one.message);
    return out.empty() ? out : out + "\n";
}

inline std::string next(NextReading const& next) {
    auto const verb = next.again ? "read again" : "read next";
    bool const is_current = !next.part.empty();
    auto out = is_current ? fmt::format("{}, {}: the current, clamp around {}\n", verb, of(next.moment), next.part)
                          : fmt::format("{}, {}: red on {}, black on {} ({})\n", verb, of(next.moment), next.red,
                                        next.black, where(next.places));
    if (next.places.size() > 1)
        out += "           the two are further apart than a meter's leads reach: lengthen one of them\n";
    for (auto const& expected : next.expected)
        out += fmt::format("{:>9.2f} {}  if {}\n", (is_current ? expected.flows.value() : expected.reads.value()) + 0.0,
                           is_current ? "A" : "V", of(expected.faults));
    return out;
}

} // namespace internal::trace_words

BANKWRIGHT_INLINE std::string trace_text(Traced const& traced, TextStyle const& style) {
    auto const& result = traced.result;
    auto const taken = traced.sheet.volts.size() + traced.sheet.amps.size();
    auto out = fmt::format("{}: {}\n\n", terminal_safe(traced.file), counted(static_cast<int>(taken), "reading"));
    if (!result.explained)
        out += "no fault that was tried fits these readings: take them again, and look closely at the nearest "
               "care\n\n";
    out += internal::trace_words::doubts(result.doubtful);
    out += internal::trace_words::hypotheses(result.diagnoses);
    if (result.current_at_rest)
        out += "\nmuch current may flow although every load is off: if anything is warm, read no further; keep clear, "
               "open a disconnect or fuse upstream if there is one, and break nothing under load by hand\n";
    if (result.next)
        out += "\n" + internal::trace_words::next(*result.next);
    else if (!result.diagnoses.empty() && result.diagnoses.front().probability < 0.9)
        out += "\nno voltage reading would tell more\n";
    return out + "\n" + caution_text(measuring_cautions, style);
}

} // namespace bankwright
