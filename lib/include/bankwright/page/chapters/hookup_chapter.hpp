// The order in which to connect it and to take it apart, as a list to tick, with a box for every reading.
#pragma once

#include "bankwright/drawing/words.hpp"
#include "bankwright/page/bank_report.hpp"
#include "bankwright/page/html/html.hpp"
#include "bankwright/page/html/sentences.hpp"
#include "bankwright/reports/cautions.hpp"
#include "bankwright/reports/hookup_words.hpp"
#include "bankwright/reports/tally.hpp"
#include "bankwright/units/print.hpp"

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include <fmt/format.h>

namespace bankwright::page {

// The trade's usual cautions, once, and before the hand goes to the bank. On paper they and the hook-up begin a sheet
// that can be handed over.
inline void cautions_chapter(Html& html, BankReport const& report) {
    html.chapter("cautions", "Before you touch the bank", report.hookup ? "sheet" : "");
    std::vector<std::string> said;
    for (auto const caution : cautions)
        said.push_back(sentence(caution));
    html.open("div", "cautions").items(said).close().close();
}

class HookupChapter {
public:
    HookupChapter(Html& html, BankReport const& report) : html_(html), report_(report) {}

    void write() {
        html_.chapter("hookup", "Hook-up, step by step");
        if (report_.hookup) {
            record();
            to_begin_with();
            alone();
            connect();
            take_apart();
        } else {
            html_.paragraph(sentence(report_.no_hookup));
        }
        html_.close();
    }

private:
    std::string meter(std::optional<Voltage> const& reading) const { return shown(reading, report_.options.hookup); }

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

    void to_begin_with() {
        html_.element("h3", "To begin with");
        auto const& meter = report_.options.hookup;
        html_.open("ul", "steps");
        for (auto const* words :
             {"Every motor and load off, chargers off and unplugged.",
              "Batteries rested for some hours: fresh from a charge or a run they read other voltages."})
            html_.open("li"), tick(words), html_.close();
        for (auto const& [action, words] : {std::pair{HookupAction::close, "Open: "},
                                            {HookupAction::fit, "Fuses out: "},
                                            {HookupAction::mate, "Plugs apart: "}}) {
            std::vector<std::string> parts;
            for (auto const& step : report_.hookup->steps)
                if (step.action == action) parts.push_back("`" + step.part + "`");
            if (!parts.empty()) html_.open("li"), tick(words + all_of(parts) + "."), html_.close();
        }
        html_.close();
        if (!report_.hookup->left_open.empty())
            html_.paragraph("Open, and open to the end, as the file has it: " + all_of(report_.hookup->left_open) +
                            ".");
        html_.paragraph(
            fmt::format("Meter on d.c. volts, right to {:.3g} % + {} digits; each battery within {:.3g} % of the "
                        "charge in the file. A reading outside its range: stop, find out why, and put it right "
                        "before the next step.",
                        100.0 * meter.of_reading, meter.digits, meter.charge_within.in_percent()));
        html_.paragraph(
            "Floating: the two points share no path yet; a meter shows 0 V or drifts about it. What a wrong "
            "reading may mean is worked out for one mistake at a time, all readings before having been right.");
    }

    std::string range(MeterReading const& right) const {
        if (!right.expected) return "floating";
        return fmt::format("expect {} ({} to {})", meter(right.expected), meter(right.low), meter(right.high));
    }

    void reading(std::string const& when, MeterReading const& right, std::string const& of) {
        html_.open("div", "reading").open("span");
        html_.prose(fmt::format("{}: red on `{}`, black on `{}`: ", when, right.red, right.black));
        html_.element("strong", range(right)).close();
        box(fmt::format("reading {}, {}", of, sentence(when).substr(0, when.size())));
        html_.close();
        constexpr std::size_t most_groups = 4, most_causes = 3;
        std::vector<std::string> wrong;
        for (std::size_t g = 0; g < std::min(most_groups, right.wrong.size()); ++g)
            wrong.push_back(meter(right.wrong[g].causes.front().reads) + ": " + said(right.wrong[g], most_causes));
        if (right.wrong.size() > most_groups)
            wrong.push_back("and " + counted(static_cast<int>(right.wrong.size() - most_groups), "other reading"));
        if (!wrong.empty()) html_.items(wrong, "small");
    }

    void alone() {
        html_.element("h3", "Each battery alone, before anything is landed");
        html_.open("ol", "steps");
        for (auto const& battery : report_.hookup->batteries)
            html_.open("li"), reading("Alone", battery, "of " + battery.red), html_.close();
        html_.close();
    }

    std::string copper(std::string const& part) const {
        for (auto const* runs : {&report_.bank.jumpers, &report_.bank.cables})
            for (auto const& run : *runs)
                if (run.conductor.id == part) {
                    auto words = drawing::size_and_length(run.conductor);
                    if (run.conductor.color) words += (words.empty() ? "" : ", ") + *run.conductor.color;
                    return words.empty() ? words : " (" + words + ")";
                }
        return {};
    }

    void connect() {
        html_.element("h3", "Connect").open("ol", "steps");
        int number = 0;
        for (auto const& step : report_.hookup->steps) {
            auto const land = step.action == HookupAction::land;
            auto title = fmt::format("{}. {} `{}`", ++number, sentence_case(in_words(step.action, false)), step.part);
            if (land) title += fmt::format(": `{}` first, then `{}`{}", step.first, step.last, copper(step.part));
            html_.open("li");
            auto const of = fmt::format("of step {}", number);
            if (step.before) html_.paragraph(title, "title");
            if (step.before) reading("Before", *step.before, of);
            if (step.equalizing) flows(*step.equalizing, land ? "land" : "close");
            tick(step.before ? "Now " + in_words(step.action, false) + " `" + step.part + "`" : title);
            if (step.dead) html_.paragraph("Dead on both sides: nothing to read.", "small");
            if (step.after) reading("After", *step.after, of);
            html_.close();
        }
        html_.close();
        bool const closes = std::any_of(report_.hookup->steps.begin(), report_.hookup->steps.end(),
                                        [](auto const& step) { return step.equalizing.has_value(); });
        html_.paragraph(closes ? "The most that a gap reads before it closes a loop is " +
                                     meter(report_.hookup->largest_gap) + "."
                               : std::string("No step closes a loop through batteries."));
    }

    void flows(Equalizing const& loop, std::string_view verb) {
        auto const expected = amperes(loop.expected), at_most = amperes(loop.at_most);
        html_.paragraph(expected == "0 A" && at_most == "0 A"
                            ? std::string("This closes a loop; with such batteries nothing should flow in it.")
                            : fmt::format("This closes a loop: {} at first, up to {} with the charges at their worst.",
                                          expected, at_most));
        if (loop.gap_limit)
            html_.paragraph(fmt::format("Do not {} it above {} either way: `{}` would carry more than it may.", verb,
                                        meter(loop.gap_limit), loop.limited_by));
    }

    void take_apart() {
        html_.element("h3", "Take apart").open("ol", "steps");
        int number = 0;
        std::string last;
        for (auto const& step : report_.hookup->disconnect) {
            auto title = fmt::format("{}. {} `{}`", ++number, sentence_case(in_words(step.undoes, true)), step.part);
            if (step.undoes == HookupAction::land)
                title += fmt::format(": `{}` first, then `{}`", step.first, step.last);
            html_.open("li");
            tick(title);
            if (step.then) reading("Then", *step.then, fmt::format("of step {} of taking apart", number));
            auto const live =
                step.still_live ? fmt::format("Still live: {} between `{}` and `{}`.", meter(step.still_live->expected),
                                              step.still_live->red, step.still_live->black)
                                : std::string("No more than a single battery is live now.");
            if (live != last) html_.paragraph(live, "small");
            last = live;
            html_.close();
        }
        html_.close();
    }

    static std::string sentence_case(std::string words) {
        auto const whole = sentence(words);
        return whole.substr(0, words.size());
    }

    Html& html_;
    BankReport const& report_;
};

} // namespace bankwright::page
