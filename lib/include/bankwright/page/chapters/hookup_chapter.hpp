// The order in which to connect it and to take it apart, as a list to tick, with a box for every reading.
#pragma once

#include "bankwright/page/bank_report.hpp"
#include "bankwright/page/html/html.hpp"
#include "bankwright/page/html/sentences.hpp"
#include "bankwright/reports/cautions.hpp"
#include "bankwright/reports/hookup_words.hpp"

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
        heading(hookup_words::to_begin_with).open("ul", "steps");
        for (auto const& line : sheet.to_begin_with)
            html_.open("li"), tick(sentence(line)), html_.close();
        html_.close();
        if (!sheet.left_open.empty()) html_.paragraph(sentence(sheet.left_open));
        std::string how;
        for (auto const& line : sheet.how_to_read)
            how += (how.empty() ? "" : " ") + sentence(line);
        html_.paragraph(how);
        heading(hookup_words::each_alone).open("ol", "steps");
        for (auto const& battery : sheet.batteries)
            html_.open("li"), reading(battery.reading, "of " + battery.red), html_.close();
        html_.close();
        if (sheet.dead_steps > 0) heading(hookup_words::connect_dead);
        steps(sheet.connect, 0, sheet.dead_steps, "of step {}");
        if (!sheet.with_ohmmeter.empty()) {
            heading(hookup_words::with_an_ohmmeter).open("ul", "steps");
            for (auto const& line : sheet.with_ohmmeter)
                html_.open("li"), tick(sentence(line)), html_.close();
            html_.close();
        }
        heading(hookup_words::connect);
        steps(sheet.connect, sheet.dead_steps, sheet.connect.size(), "of step {}");
        html_.paragraph(sentence(sheet.loops));
        if (!sheet.at_the_end.empty()) {
            heading(hookup_words::at_the_end).open("ul", "steps");
            for (auto const& line : sheet.at_the_end)
                html_.open("li"), tick(sentence(line)), html_.close();
            html_.close();
        }
        heading(hookup_words::disconnect);
        steps(sheet.disconnect, 0, sheet.disconnect.size(), "of step {} of taking apart");
    }

    Html& heading(char const* words) { return html_.element("h3", as_title(words)); }

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

    void reading(hookup_words::ReadingLines const& one, std::string const& of) {
        auto const when = as_title(one.when);
        html_.open("div", "reading").open("span").prose(when + ": " + one.where + ": ");
        html_.element("strong", one.expected).close();
        box(fmt::format("reading {}, {}", of, when));
        html_.close();
        if (!one.wrong.empty()) html_.items(one.wrong, "small");
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
            if (step.before) {
                html_.paragraph(title, "title");
                reading(*step.before, of);
            }
            for (auto const& flows : step.flows)
                html_.paragraph(sentence(flows));
            tick(step.before ? "Now " + step.act : title);
            if (step.after) reading(*step.after, of);
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

    Html& html_;
    BankReport const& report_;
};

} // namespace bankwright::page
