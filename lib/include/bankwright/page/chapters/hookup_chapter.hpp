// The order in which to connect it and to take it apart, as a list to tick, with a box for every reading.
#pragma once

#include "bankwright/page/bank_report.hpp"
#include "bankwright/page/html/html.hpp"
#include "bankwright/page/html/sentences.hpp"
#include "bankwright/reports/cautions.hpp"
#include "bankwright/reports/hookup_words.hpp"
#include "bankwright/reports/log_words.hpp"
#include "bankwright/text/escape.hpp"

#include <string>
#include <vector>

#include <fmt/format.h>

namespace bankwright::page {

// The trade's usual cautions, once, and before the hand goes to the bank: on paper they and the hook-up begin a sheet
// that can be handed over. Where the verdict is to stop, they stand there.
inline void cautions_chapter(Html& html, BankReport const& report) {
    if (calls_for_cautions(report.verdict.findings)) return;
    html.chapter("cautions", "Before you touch the bank", report.hookup ? "sheet" : "");
    auto const said = report.hookup ? hookup_cautions() : cautions_for(report.verdict.findings);
    html.open("div", "cautions").items(sentences(said)).close().close();
}

// A line of the sheet, as a log has it.
struct SheetLine {
    LogWhen when = LogWhen::done;
    std::size_t index = 0;
};

class HookupChapter {
public:
    HookupChapter(Html& html, BankReport const& report) : html_(html), report_(report) {}

    void write() {
        html_.chapter("hookup", "Hook-up, step by step");
        if (report_.hookup)
            lay_out(hookup_words::sheet(*report_.hookup, report_.bank, report_.options.hookup));
        else
            html_.paragraph(sentence(report_.no_hookup));
        html_.close();
    }

private:
    void lay_out(hookup_words::Sheet const& sheet) {
        record();
        how_it_stands();
        part(hookup_words::to_begin_with).open("ul", "steps");
        for (auto const& line : sheet.to_begin_with)
            html_.open("li"), tick(sentence(line)), html_.close();
        html_.close();
        if (!sheet.left_open.empty()) html_.paragraph(sentence(sheet.left_open));
        std::string how;
        for (auto const& line : sheet.how_to_read)
            how += (how.empty() ? "" : " ") + sentence(line);
        html_.paragraph(how).close();
        part(hookup_words::each_alone).open("ol", "steps");
        for (std::size_t b = 0; b < sheet.batteries.size(); ++b) {
            auto const& battery = sheet.batteries[b];
            html_.open("li"), reading(battery.reading, "of " + battery.red, {LogWhen::alone, b}), html_.close();
        }
        html_.close().close();
        if (sheet.dead_steps > 0) {
            part(hookup_words::connect_dead);
            steps(sheet.connect, 0, sheet.dead_steps, "of step {}");
            html_.close();
        }
        if (!sheet.with_ohmmeter.empty()) {
            part(hookup_words::with_an_ohmmeter).open("ul", "steps");
            for (std::size_t d = 0; d < sheet.with_ohmmeter.size(); ++d) {
                html_.open("li"), tick(sentence(sheet.with_ohmmeter[d]));
                if (report_.hookup && d < report_.hookup->dead.size()) as_read(ohms_at(d));
                html_.close();
            }
            html_.close().close();
        }
        part(hookup_words::connect);
        steps(sheet.connect, sheet.dead_steps, sheet.connect.size(), "of step {}");
        html_.paragraph(sentence(sheet.loops));
        if (!sheet.at_the_end.empty()) {
            html_.element("h4", as_title(hookup_words::at_the_end)).open("ul", "steps");
            for (auto const& line : sheet.at_the_end)
                html_.open("li"), tick(sentence(line)), html_.close();
            html_.close();
        }
        html_.close();
        disconnect_ = &sheet.disconnect;
        part(hookup_words::disconnect);
        steps(sheet.disconnect, 0, sheet.disconnect.size(), "of step {} of taking apart");
        html_.close();
    }

    Html& part(char const* words) { return html_.fold_under(as_title(words)); }

    void box(std::string const& label) {
        html_.open("input", "write").attribute("type", "text").attribute("inputmode", "decimal");
        html_.attribute("autocomplete", "off").attribute("aria-label", label).close_empty();
    }
    void tick(std::string const& words) {
        html_.open("label", "tick").open("input").attribute("type", "checkbox").close_empty();
        html_.open("span").prose(words).close().close();
    }

    void record() {
        html_.open("div", "record");
        for (auto const* what : {"Boat", "Date", "Done by"}) {
            html_.open("label").text(what);
            html_.open("input", "write")
                .attribute("type", "text")
                .attribute("autocomplete", "off")
                .close_empty()
                .close();
        }
        html_.close();
    }

    SheetLine ohms_at(std::size_t check) const {
        constexpr LogWhen when[] = {LogWhen::run, LogWhen::loop, LogWhen::apart, LogWhen::load, LogWhen::hull};
        return {when[static_cast<std::size_t>(report_.hookup->dead[check].kind)], check};
    }

    // What was read there beside what was expected, with its date. False: nothing yet.
    bool as_read(SheetLine line) {
        if (!report_.logged) return false;
        auto const& logged = *report_.logged;
        for (std::size_t q = 0; q < logged.questions.size(); ++q) {
            auto const& question = logged.questions[q];
            auto const& answer = logged.judged.answers[q];
            if (!answer || question.when != line.when || question.index != line.index) continue;
            auto const& entry = logged.log.entries[answer->entry];
            bool const goes = answer->is_right && !answer->is_over_gap;
            html_.open("p", goes ? "read" : "read stop").text(goes ? "Read: " : "Stop. Read: ");
            html_.element("strong", log_words::said(entry.reads, logged.options));
            if (!entry.time.empty()) html_.text(", " + terminal_safe(entry.time));
            html_.close();
            return true;
        }
        return false;
    }

    // Of a hook-up with a log: how far it has come, and what stopped it.
    void how_it_stands() {
        if (!report_.logged) return;
        auto const& logged = *report_.logged;
        auto const state = logged.judged.state;
        html_.open("div", state == HookupState::stopped ? "finding error" : "finding note");
        html_.element("h3", state == HookupState::complete  ? "All read, all right"
                            : state == HookupState::stopped ? "Stopped"
                                                            : "Not finished");
        if (auto const changed = log_words::changed(logged); !changed.empty()) html_.paragraph(sentence(changed));
        if (state == HookupState::stopped) {
            auto const asked = log_words::asked(logged);
            html_.paragraph(
                sentence(asked[*logged.judged.at].act + ": " + log_words::verdict(logged, asked, *logged.judged.at)));
            html_.items(log_words::causes(logged));
        }
        html_.close();
    }

    void reading(hookup_words::ReadingLines const& one, std::string const& of, SheetLine line = {}) {
        auto const when = as_title(one.when);
        html_.open("div", "reading").open("span").prose(when + ": " + one.where + ": ");
        html_.element("strong", one.expected).close();
        if (!has_answer(line)) box(fmt::format("reading {}, {}", of, when));
        html_.close();
        as_read(line);
        if (!one.wrong.empty()) html_.fold("If it reads something else", "small").items(one.wrong).close();
    }

    // The box of a step that is read before it is taken stands between the two.
    void steps(std::vector<hookup_words::StepLines> const& steps, std::size_t first, std::size_t end,
               char const* place) {
        if (first == end) return;
        html_.open("ol", "steps");
        for (auto number = first; number < end;) {
            auto const& step = steps[number];
            auto const title = fmt::format("{}. {}", ++number, as_title(step.title));
            auto const of = fmt::format(fmt::runtime(place), number);
            html_.open("li");
            if (!step.place.empty()) html_.paragraph(step.place, "small");
            bool const connects = &steps != disconnect_;
            if (step.before) {
                html_.paragraph(title, "title");
                reading(*step.before, of, {LogWhen::before, number - 1});
            }
            for (auto const& flows : step.flows)
                html_.paragraph(sentence(flows));
            tick(step.before ? "Now " + step.act : title);
            if (step.after) reading(*step.after, of, connects ? SheetLine{LogWhen::after, number - 1} : SheetLine{});
            if (!step.left.empty()) html_.paragraph(sentence(step.left), "small");
            html_.close();
        }
        html_.close();
    }

    // As a sentence begins, without its full stop.
    static std::string as_title(std::string const& words) {
        auto const whole = sentence(words);
        return whole.back() == '.' && words.back() != '.' ? whole.substr(0, whole.size() - 1) : whole;
    }

    bool has_answer(SheetLine line) const {
        if (!report_.logged) return false;
        auto const& logged = *report_.logged;
        for (std::size_t q = 0; q < logged.questions.size(); ++q)
            if (logged.judged.answers[q] && logged.questions[q].when == line.when &&
                logged.questions[q].index == line.index)
                return true;
        return false;
    }

    Html& html_;
    BankReport const& report_;
    std::vector<hookup_words::StepLines> const* disconnect_ = nullptr; // nothing of it is in a log
};

} // namespace bankwright::page
