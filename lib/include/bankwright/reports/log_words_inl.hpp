// Bodies of log_words.hpp.
#pragma once

#include "bankwright/reports/hookup_words.hpp"
#include "bankwright/reports/log_words.hpp"
#include "bankwright/reports/tally.hpp"
#include "bankwright/text/escape.hpp"
#include "bankwright/units/print.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include <fmt/format.h>

namespace bankwright {
namespace internal::log_saying {

inline std::string quoted(std::string const& name) { return "`" + name + "`"; }

// As many decimals as the meter shows.
inline std::string volts(Voltage reading, HookupOptions const& options) {
    auto const value = reading.value();
    auto const digit = options.resolution ? options.resolution->value() : std::abs(value) < 20.0 ? 0.01 : 0.1;
    auto const decimals = std::clamp(static_cast<int>(std::ceil(-std::log10(digit) - 1e-9)), 0, 6);
    auto text = fmt::format("{:.{}f} V", value, decimals);
    if (text.front() == '-' && text.find_first_of("123456789") == std::string::npos) text.erase(0, 1);
    return text;
}

inline std::string share(double probability) {
    if (probability > 0.99) return "over 99 %";
    return fmt::format("{:.0f} %", 100.0 * probability);
}

// An ohmmeter's line of the sheet is one sentence: what is read, then what to expect.
inline log_words::Asked ohms_asked(std::string const& line) {
    auto const at = line.find(": expect ");
    log_words::Asked asked;
    asked.read = line.substr(0, at);
    if (at != std::string::npos) asked.expected = line.substr(at + 2);
    return asked;
}

} // namespace internal::log_saying

BANKWRIGHT_INLINE std::vector<log_words::Asked> log_words::asked(LoggedHookup const& logged) {
    auto const sheet = hookup_words::sheet(logged.sheet, logged.bank, logged.options);
    std::vector<Asked> all;
    for (auto const& question : logged.questions) {
        Asked one;
        auto const take = [&](hookup_words::ReadingLines const& lines) {
            one.read = lines.where;
            one.expected = lines.expected;
            one.wrong = lines.wrong;
        };
        switch (question.when) {
        case LogWhen::alone:
            take(sheet.batteries[question.index].reading);
            break;
        case LogWhen::before:
            one.act = "before you " + sheet.connect[question.index].act;
            take(*sheet.connect[question.index].before);
            break;
        case LogWhen::after:
            one.act = sheet.connect[question.index].title;
            take(*sheet.connect[question.index].after);
            break;
        case LogWhen::done:
            one.act = sheet.connect[question.index].title;
            break;
        default:
            one = internal::log_saying::ohms_asked(sheet.with_ohmmeter[question.index]);
        }
        all.push_back(std::move(one));
    }
    return all;
}

BANKWRIGHT_INLINE std::string log_words::said(Shown const& shown, HookupOptions const& options) {
    if (std::holds_alternative<AsExpected>(shown)) return "as expected";
    if (std::holds_alternative<NoPath>(shown)) return "OL";
    if (auto const* read = std::get_if<Voltage>(&shown)) return internal::log_saying::volts(*read, options);
    return fmt::format("{:.4g} ohm", std::get<Resistance>(shown).value());
}

BANKWRIGHT_INLINE std::string log_words::verdict(LoggedHookup const& logged, std::vector<Asked> const& asked,
                                                 std::size_t question) {
    auto const& answer = logged.judged.answers[question];
    if (!answer) return {};
    auto const shown = said(logged.log.entries[answer->entry].reads, logged.options);
    auto expected = asked[question].expected;
    if (expected.rfind("expect ", 0) == 0) expected.erase(0, 7);
    if (answer->is_over_gap) {
        auto const& flows = *logged.sheet.steps[logged.questions[question].index].equalizing;
        return fmt::format("stop: {}, more than {}: `{}` would carry more than it may; bring the batteries to one "
                           "charge first",
                           shown, internal::log_saying::volts(*flows.gap_limit, logged.options), flows.limited_by);
    }
    if (!answer->is_right) return fmt::format("stop: {}; expected is {}", shown, expected);
    return logged.questions[question].when == LogWhen::done ? "go" : fmt::format("go: {}", shown);
}

BANKWRIGHT_INLINE std::string log_words::said(Mistake const& mistake) {
    using internal::log_saying::quoted;
    switch (mistake.kind) {
    case MistakeKind::battery_turned:
        return quoted(mistake.part) + " is the wrong way around";
    case MistakeKind::battery_low:
        return quoted(mistake.part) + " is low on charge";
    case MistakeKind::cell_dead:
        return "a cell of " + quoted(mistake.part) + " is dead";
    case MistakeKind::end_elsewhere:
        return fmt::format("`{}` is on `{}`, not on `{}`", mistake.part, mistake.onto, mistake.at);
    case MistakeKind::leads_exchanged:
        return fmt::format("the leads on `{}` and `{}` are swapped", mistake.at, mistake.onto);
    case MistakeKind::not_joined:
        return quoted(mistake.part) + " is not on, or does not conduct";
    case MistakeKind::bypassed:
        return fmt::format("what belongs on `{}` is on `{}`: nothing flows through `{}`", mistake.at, mistake.onto,
                           mistake.part);
    case MistakeKind::across:
        return fmt::format("something that is not in the plan joins `{}` and `{}`", mistake.at, mistake.onto);
    }
    return {};
}

BANKWRIGHT_INLINE std::vector<std::string> log_words::causes(LoggedHookup const& logged) {
    constexpr std::size_t most = 3, most_alike = 3;
    constexpr double likely = 0.02;
    std::vector<std::string> lines;
    if (!logged.judged.found) return lines;
    for (auto const& chance : logged.judged.found->chances) {
        if (lines.size() == most || chance.probability < likely) break;
        std::string line = internal::log_saying::share(chance.probability) + ": ";
        if (chance.alike.empty()) line += "all is as it should be, and the reading is at fault";
        for (std::size_t m = 0; m < std::min(most_alike, chance.alike.size()); ++m)
            line += (m == 0 ? "" : ", or ") + said(chance.alike[m]);
        if (chance.alike.size() > most_alike)
            line += fmt::format(", or {} more that read the same", chance.alike.size() - most_alike);
        lines.push_back(std::move(line));
    }
    return lines;
}

BANKWRIGHT_INLINE std::optional<log_words::Further> log_words::further(LoggedHookup const& logged) {
    if (!logged.judged.found || !logged.judged.found->next || logged.judged.again) return std::nullopt;
    auto const& next = *logged.judged.found->next;
    Further further{fmt::format("red on `{}`, black on `{}`", next.red, next.black), {}, next.is_ohms};
    constexpr std::size_t most = 3;
    for (auto const& one : next.expected) {
        if (further.expected.size() == most) break;
        auto const& alike = logged.judged.found->chances[one.chance].alike;
        auto const reads = next.is_ohms ? std::string(one.joined ? "less than 1 ohm" : "no continuity")
                                        : internal::log_saying::volts(one.reads, logged.options);
        further.expected.push_back(reads + ": " + (alike.empty() ? "the reading was at fault" : said(alike.front())));
    }
    return further;
}

BANKWRIGHT_INLINE std::string log_words::put_right(LoggedHookup const& logged) {
    if (logged.judged.state != HookupState::stopped) return {};
    if (logged.judged.again) return "the reading itself is doubted: take it once more, meter on DC volts";
    if (!logged.judged.found) return "then read again";
    return "open what is closed, correct it, then read again";
}

BANKWRIGHT_INLINE std::string log_words::changed(LoggedHookup const& logged) {
    if (logged.changed.empty()) return {};
    constexpr std::size_t most = 6;
    std::vector<std::string> names;
    for (auto const& part : logged.changed)
        if (names.size() < most) names.push_back(internal::log_saying::quoted(part));
    auto const more = logged.changed.size() - names.size();
    return fmt::format("the bank file has changed since this log was begun: {}{}; what was read on it may not hold",
                       fmt::join(names, ", "), more > 0 ? fmt::format(" and {} more", more) : std::string());
}

} // namespace bankwright
