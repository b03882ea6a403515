// Body of hookup_text.hpp.
#pragma once

#include "bankwright/reports/cautions.hpp"
#include "bankwright/reports/findings_text.hpp"
#include "bankwright/reports/hookup_text.hpp"
#include "bankwright/reports/hookup_words.hpp"
#include "bankwright/reports/table.hpp"
#include "bankwright/reports/tally.hpp"
#include "bankwright/text/escape.hpp"

#include <string>
#include <string_view>
#include <vector>

#include <fmt/format.h>

namespace bankwright {
namespace internal::hookup_text {

// Names stand bare in a text.
inline std::string bare(std::string_view words) {
    std::string out;
    for (char const c : words)
        if (c != '`') out += c;
    return out;
}

class TextSheet {
public:
    explicit TextSheet(TextStyle const& style) : style_(style) {}

    void head(std::string_view words) { out_ += "\n" + paint(Ink::strong, std::string(words) + ":", style_) + "\n"; }
    void point(std::string_view words) { out_ += "  - " + bare(words) + "\n"; }
    void line(std::string_view words) { out_ += "\n" + bare(words) + "\n"; }

    void batteries(std::vector<hookup_words::BatteryLines> const& batteries) {
        std::vector<Row> rows{{"", "red on", "black on", "expect", "", "turned", "nearly flat", "a dead cell"}};
        for (auto const& one : batteries)
            rows.push_back({"    ", one.red, one.black, one.expected, fmt::format("({} to {})", one.low, one.high),
                            one.turned, one.nearly_flat, one.dead_cell});
        out_ += table(rows, {Align::left, Align::left, Align::left, Align::right, Align::left, Align::right,
                             Align::right, Align::right});
    }

    void steps(std::vector<hookup_words::StepLines> const& steps, std::size_t first, std::size_t end) {
        std::string place;
        for (auto number = first; number < end;) {
            auto const& step = steps[number];
            if (step.place != place) out_ += fmt::format("  {}:\n", paint(Ink::note, bare(step.place), style_));
            place = step.place;
            out_ += fmt::format("{:>3}. {}\n", ++number, paint(Ink::strong, bare(step.title), style_));
            if (step.before) reading(*step.before);
            for (auto const& flows : step.flows)
                out_ += "        " + bare(flows) + "\n";
            if (step.after) reading(*step.after);
            if (!step.left.empty()) out_ += "     " + bare(step.left) + "\n";
        }
    }

    std::string const& text() const { return out_; }

private:
    void reading(hookup_words::ReadingLines const& one) {
        out_ += fmt::format("     {:<8}{}: {}\n", one.when + ":", bare(one.where), one.expected);
        for (auto const& wrong : one.wrong)
            out_ += "        " + wrong + "\n";
    }

    TextStyle style_;
    std::string out_;
};

inline std::string laid_out(hookup_words::Sheet const& sheet, TextStyle const& style) {
    TextSheet text(style);
    text.head("before you touch the bank");
    for (auto const caution : hookup_cautions())
        text.point(caution);
    text.head("how to read this");
    for (auto const& line : sheet.how_to_read)
        text.point(line);
    text.head(hookup_words::to_begin_with);
    for (auto const& line : sheet.to_begin_with)
        text.point(line);
    if (!sheet.left_open.empty()) text.point(sheet.left_open);
    text.head(hookup_words::each_alone);
    text.batteries(sheet.batteries);
    if (sheet.dead_steps > 0) text.head(hookup_words::connect_dead);
    text.steps(sheet.connect, 0, sheet.dead_steps);
    if (!sheet.with_ohmmeter.empty()) text.head(hookup_words::with_an_ohmmeter);
    for (auto const& line : sheet.with_ohmmeter)
        text.point(line);
    text.head(hookup_words::connect);
    text.steps(sheet.connect, sheet.dead_steps, sheet.connect.size());
    text.line(sheet.loops);
    if (!sheet.at_the_end.empty()) text.head(hookup_words::at_the_end);
    for (auto const& line : sheet.at_the_end)
        text.point(line);
    text.head(hookup_words::disconnect);
    text.steps(sheet.disconnect, 0, sheet.disconnect.size());
    return text.text();
}

} // namespace internal::hookup_text

BANKWRIGHT_INLINE std::string hookup_text(HookedUp const& hooked, TextStyle const& style) {
    if (hooked.result) {
        auto const sheet = hookup_words::sheet(*hooked.result, hooked.bank, hooked.options);
        std::string said;
        for (auto const& finding : hooked.findings)
            said += finding_text(finding, hooked.file, hooked.text, style);
        if (!said.empty()) said = "\nthis is wrong with the bank, and no reason not to wire it:\n\n" + said;
        return fmt::format("{}: {}hook-up in {}\n", terminal_safe(hooked.file),
                           hooked.arrangement ? *hooked.arrangement + ", " : std::string(),
                           counted(static_cast<int>(sheet.connect.size()), "step")) +
               said + internal::hookup_text::laid_out(sheet, style);
    }
    auto out = fmt::format("{}: no hook-up: correct this first\n\n", terminal_safe(hooked.file));
    for (auto const& finding : hooked.findings)
        out += finding_text(finding, hooked.file, hooked.text, style);
    out += "\n" + caution_text(refusal_cautions(hooked.findings), style);
    return out + fmt::format("\n`bankwright check {}` finds {} in this bank\n", terminal_safe(hooked.file),
                             counted(hooked.counts.error, "error"));
}

} // namespace bankwright
