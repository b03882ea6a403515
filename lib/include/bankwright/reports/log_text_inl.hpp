// Body of log_text.hpp.
#pragma once

#include "bankwright/reports/log_text.hpp"
#include "bankwright/reports/log_words.hpp"
#include "bankwright/reports/table.hpp"
#include "bankwright/reports/tally.hpp"
#include "bankwright/text/escape.hpp"

#include <string>
#include <string_view>
#include <vector>

#include <fmt/format.h>

namespace bankwright {
namespace internal::log_lines {

// Names stand bare in a text.
inline std::string bare(std::string_view words) {
    std::string out;
    for (char const c : words)
        if (c != '`') out += c;
    return out;
}

inline std::string what(HookupQuestion const& question, log_words::Asked const& asked) {
    if (question.when == LogWhen::alone) return fmt::format("{} alone", question.part);
    bool const is_of_step =
        question.when == LogWhen::before || question.when == LogWhen::after || question.when == LogWhen::done;
    if (!is_of_step && question.when == LogWhen::apart) return bare(asked.read);
    if (!is_of_step) return fmt::format("{}, {}", question.part, name(question.when));
    return fmt::format("{}. {} {}", question.index + 1, question.part, name(question.when));
}

inline std::string place(HookupState state, TextStyle const& style) {
    switch (state) {
    case HookupState::asking:
        return paint(Ink::strong, "not finished", style);
    case HookupState::stopped:
        return paint(Ink::strong, "stopped", style);
    case HookupState::complete:
        return paint(Ink::strong, "all read, all right", style);
    }
    return {};
}

} // namespace internal::log_lines

BANKWRIGHT_INLINE std::string log_text(LoggedHookup const& logged, TextStyle const& style) {
    using namespace internal::log_lines;
    auto const asked = log_words::asked(logged);
    auto const& judged = logged.judged;
    std::size_t answered = 0;
    for (auto const& answer : judged.answers)
        answered += answer.has_value();
    auto out =
        fmt::format("{}: hook-up by {}: {}, {} of {} answered\n", terminal_safe(logged.file),
                    terminal_safe(logged.log_file), place(judged.state, style), answered, logged.questions.size());
    if (auto const changed = log_words::changed(logged); !changed.empty()) out += "\n" + bare(changed) + "\n";
    std::vector<Row> rows{{"", "read", "expected", "when", ""}};
    for (std::size_t q = 0; q < logged.questions.size(); ++q) {
        auto const& answer = judged.answers[q];
        if (!answer || logged.questions[q].when == LogWhen::done) continue;
        auto const& entry = logged.log.entries[answer->entry];
        auto expected = asked[q].expected;
        if (expected.rfind("expect ", 0) == 0) expected.erase(0, 7);
        expected = expected.substr(0, expected.find(';'));
        rows.push_back({what(logged.questions[q], asked[q]), log_words::said(entry.reads, logged.options), expected,
                        terminal_safe(entry.time), answer->is_right && !answer->is_over_gap ? "go" : "stop"});
    }
    for (auto const e : judged.further) {
        auto const& entry = logged.log.entries[e];
        rows.push_back({fmt::format("red {}, black {}", entry.red, entry.black),
                        log_words::said(entry.reads, logged.options), "", terminal_safe(entry.time), ""});
    }
    if (rows.size() > 1) out += "\n" + table(rows, {Align::left, Align::right, Align::left, Align::left, Align::left});
    if (!judged.left_out.empty()) {
        out += "\nnot read: ";
        for (std::size_t i = 0; i < judged.left_out.size(); ++i)
            out += (i == 0 ? "" : "; ") + what(logged.questions[judged.left_out[i]], asked[judged.left_out[i]]);
        out += "\n";
    }
    for (auto const e : judged.strays) {
        auto const& entry = logged.log.entries[e];
        out += fmt::format("\nthe sheet asks for no \"{}\" of {}\n", name(entry.when), entry.part);
    }
    if (!judged.at) return out;
    auto const& at = asked[*judged.at];
    if (judged.state == HookupState::asking) {
        out += "\nnext: " + bare(at.act) + (at.act.empty() || at.read.empty() ? "" : "; ") + bare(at.read) +
               (at.expected.empty() ? "" : ": " + bare(at.expected)) + "\n";
        return out;
    }
    out += "\n" + bare(log_words::verdict(logged, asked, *judged.at)) + "\n";
    for (auto const& cause : log_words::causes(logged))
        out += "  " + bare(cause) + "\n";
    if (auto const further = log_words::further(logged)) {
        out += fmt::format("\nread next{}: {}\n", further->is_ohms ? ", with an ohmmeter" : "", bare(further->read));
        for (auto const& expected : further->expected)
            out += "  " + bare(expected) + "\n";
    } else {
        out += bare(log_words::put_right(logged)) + "\n";
    }
    return out;
}

} // namespace bankwright
