// Body of hookup_text.hpp.
#pragma once

#include "bankwright/reports/cautions.hpp"
#include "bankwright/reports/findings_text.hpp"
#include "bankwright/reports/hookup_text.hpp"
#include "bankwright/reports/hookup_words.hpp"
#include "bankwright/reports/table.hpp"
#include "bankwright/reports/tally.hpp"
#include "bankwright/text/escape.hpp"
#include "bankwright/units/print.hpp"

#include <algorithm>
#include <string>
#include <vector>

#include <fmt/format.h>

namespace bankwright {

class HookupSheet {
public:
    HookupSheet(HookedUp const& hooked, TextStyle const& style)
        : hooked_(hooked), result_(*hooked.result), style_(style) {}

    std::string write() {
        out_ = fmt::format("{}: {}{}\n", terminal_safe(hooked_.file),
                           hooked_.arrangement ? *hooked_.arrangement + ", " : std::string(),
                           "hook-up in " + counted(static_cast<int>(result_.steps.size()), "step"));
        head("before you touch the bank");
        for (auto const& caution : cautions)
            point(std::string(caution));
        reading_it();
        start();
        alone();
        head("connect");
        int number = 0;
        for (auto const& step : result_.steps)
            connect(++number, step);
        order();
        head("disconnect");
        number = 0;
        live_.clear();
        for (auto const& step : result_.disconnect)
            disconnect(++number, step);
        return std::move(out_);
    }

private:
    void head(std::string const& words) { out_ += "\n" + paint(Ink::strong, words + ":", style_) + "\n"; }
    void point(std::string const& words) { out_ += "  - " + words + "\n"; }
    std::string volts(std::optional<Voltage> const& reading) const { return shown(reading, hooked_.options); }

    void reading_it() {
        auto const& options = hooked_.options;
        head("how to read this");
        point(fmt::format("meter on d.c. volts, right to {:.3g} % + {}; each battery within {:.3g} % of the charge "
                          "that the file states",
                          100.0 * options.of_reading, counted(options.digits, "digit"),
                          options.charge_within.in_percent()));
        point("floating: the two points share no path yet; a meter shows 0 V or drifts about it");
        point("a reading outside its range: stop, find out why, and put it right before the next step");
        point(
            "what a wrong one may mean is worked out for one mistake at a time, all readings before having been right");
    }

    void start() {
        head("to begin with");
        point("every motor and load off, chargers off and unplugged");
        point("batteries rested for some hours: fresh from a charge or a run they read other voltages");
        std::vector<std::string> open, out, apart;
        for (auto const& step : result_.steps) {
            if (step.action == HookupAction::close) open.push_back(step.part);
            if (step.action == HookupAction::fit) out.push_back(step.part);
            if (step.action == HookupAction::mate) apart.push_back(step.part);
        }
        auto const say = [&](char const* words, std::vector<std::string> const& parts) {
            if (!parts.empty()) point(fmt::format("{}: {}", words, fmt::join(parts, ", ")));
        };
        say("open", open);
        say("fuses out", out);
        say("plugs apart", apart);
        say("open, and open to the end, as the file has it", result_.left_open);
    }

    void alone() {
        head("each battery alone, before anything is landed");
        std::vector<Row> rows{{"", "red on", "black on", "expect", "", "turned", "nearly flat", "a dead cell"}};
        for (auto const& battery : result_.batteries) {
            Row row{"    ", battery.red, battery.black, volts(battery.expected),
                    fmt::format("({} to {})", volts(battery.low), volts(battery.high))};
            for (auto const kind : {MistakeKind::battery_turned, MistakeKind::battery_low, MistakeKind::cell_dead}) {
                row.emplace_back();
                for (auto const& wrong : battery.wrong)
                    for (auto const& cause : wrong.causes)
                        if (cause.mistake.kind == kind) row.back() = volts(cause.reads);
            }
            rows.push_back(std::move(row));
        }
        out_ += table(rows, {Align::left, Align::left, Align::left, Align::right, Align::left, Align::right,
                             Align::right, Align::right});
    }

    void reading(std::string const& when, MeterReading const& right) {
        out_ += fmt::format("     {}red on {}, black on {}: {}", when, right.red, right.black, expected(right));
        constexpr std::size_t most_groups = 5, most_causes = 3;
        for (std::size_t g = 0; g < std::min(most_groups, right.wrong.size()); ++g)
            out_ += fmt::format("        {}: {}\n", volts(right.wrong[g].causes.front().reads),
                                said(right.wrong[g], most_causes));
        if (right.wrong.size() > most_groups)
            out_ += fmt::format("        and {}, in the JSON\n",
                                counted(static_cast<int>(right.wrong.size() - most_groups), "other reading"));
    }

    std::string expected(MeterReading const& right) const {
        if (!right.expected) return "floating\n";
        return fmt::format("expect {} ({} to {})\n", volts(right.expected), volts(right.low), volts(right.high));
    }

    // "6 AWG, 0.3048 m, red"
    std::string copper(std::string const& part) const {
        for (auto const* runs : {&hooked_.bank.jumpers, &hooked_.bank.cables})
            for (auto const& run : *runs) {
                if (run.conductor.id != part) continue;
                std::vector<std::string> said;
                if (run.conductor.size) said.push_back(print(*run.conductor.size));
                if (run.conductor.length) said.push_back(print(*run.conductor.length));
                if (run.conductor.color) said.push_back(terminal_safe(*run.conductor.color));
                if (!said.empty()) return fmt::format(" ({})", fmt::join(said, ", "));
            }
        return {};
    }

    void connect(int number, HookupStep const& step) {
        auto title = in_words(step.action, false) + " " + step.part;
        if (step.action == HookupAction::land)
            title += fmt::format(": {} first, then {}{}", step.first, step.last, copper(step.part));
        out_ += fmt::format("{:>3}. {}{}\n", number, paint(Ink::strong, title, style_),
                            step.dead ? "; dead, nothing to read" : "");
        if (step.before) reading("before: ", *step.before);
        if (step.equalizing) flows(*step.equalizing, step.action == HookupAction::land ? "land" : "close");
        if (step.after) reading("after:  ", *step.after);
    }

    void flows(Equalizing const& loop, char const* verb) {
        out_ += fmt::format("        this closes a loop: {} at first, up to {} with the charges at their worst\n",
                            print(loop.expected), print(loop.at_most));
        if (!loop.gap_limit) return;
        out_ += fmt::format("        do not {} it above {} either way: {} would carry more than it may\n", verb,
                            volts(loop.gap_limit), loop.limited_by);
    }

    void order() {
        bool const closes = std::any_of(result_.steps.begin(), result_.steps.end(),
                                        [](auto const& step) { return step.equalizing.has_value(); });
        if (!closes) {
            out_ += "\nno step closes a loop through batteries\n";
            return;
        }
        out_ += fmt::format(
            "\nthe most that a gap reads before it closes a loop is {}; {}\n", volts(result_.largest_gap),
            result_.proven ? "no other order of these steps has less" : "there are too many orders to try them all");
    }

    void disconnect(int number, DisconnectStep const& step) {
        auto title = in_words(step.undoes, true) + " " + step.part;
        if (step.undoes == HookupAction::land) title += fmt::format(": {} first, then {}", step.first, step.last);
        out_ += fmt::format("{:>3}. {}\n", number, paint(Ink::strong, title, style_));
        if (step.then) reading("then: ", *step.then);
        auto const live = step.still_live
                              ? fmt::format("still live: {} between {} and {}", volts(step.still_live->expected),
                                            step.still_live->red, step.still_live->black)
                              : std::string("no more than a single battery is live now");
        if (live != live_) out_ += "     " + live + "\n";
        live_ = live;
    }

    HookedUp const& hooked_;
    HookupResult const& result_;
    TextStyle style_;
    std::string out_;
    std::string live_;
};

BANKWRIGHT_INLINE std::string hookup_text(HookedUp const& hooked, TextStyle const& style) {
    if (hooked.result) return HookupSheet(hooked, style).write();
    auto out = fmt::format("{}: no hook-up: this has to be put right first\n\n", terminal_safe(hooked.file));
    for (auto const& finding : hooked.findings)
        out += finding_text(finding, hooked.file, hooked.text, style);
    return out + fmt::format("\n`bankwright check {}` finds {} in this bank\n", terminal_safe(hooked.file),
                             counted(hooked.counts.error, "error"));
}

} // namespace bankwright
