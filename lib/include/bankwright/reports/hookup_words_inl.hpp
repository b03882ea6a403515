// Bodies of hookup_words.hpp.
#pragma once

#include "bankwright/reports/hookup_words.hpp"
#include "bankwright/reports/source_cautions.hpp"
#include "bankwright/reports/tally.hpp"
#include "bankwright/text/escape.hpp"
#include "bankwright/units/print.hpp"
#include "bankwright/wiring/places.hpp"

#include <algorithm>
#include <cmath>
#include <string_view>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace bankwright {
namespace internal::hookup_sheet {

using bankwright::hookup_words::BatteryLines;
using bankwright::hookup_words::ReadingLines;
using bankwright::hookup_words::Sheet;
using bankwright::hookup_words::StepLines;

// "A, B or C"; "A, B, C or 5 others"
inline std::string listed(std::vector<std::string> names) {
    constexpr std::size_t most = 4;
    if (names.size() > most) {
        auto const others = fmt::format("{} others", names.size() - (most - 1));
        names.resize(most - 1);
        names.push_back(others);
    }
    std::string out;
    for (std::size_t n = 0; n < names.size(); ++n)
        out += (n == 0 ? "" : n + 1 == names.size() ? " or " : ", ") + names[n];
    return out;
}

// Mistakes that differ in one name only are one phrase with several names in it.
struct Phrase {
    MistakeKind kind;
    std::string key; // what they have in common
    std::string at;
    std::vector<std::string> names;
};

inline std::vector<Phrase> phrases(WrongReading const& wrong) {
    std::vector<Phrase> found;
    for (auto const& cause : wrong.causes) {
        auto const& mistake = cause.mistake;
        bool const end = mistake.kind == MistakeKind::end_elsewhere;
        bool const leads = mistake.kind == MistakeKind::leads_exchanged || mistake.kind == MistakeKind::across;
        auto const key = end ? mistake.part : std::string();
        auto const name = end ? mistake.onto : leads ? mistake.at + " and " + mistake.onto : mistake.part;
        auto const same = std::find_if(found.begin(), found.end(), [&](Phrase const& phrase) {
            return phrase.kind == mistake.kind && phrase.key == key && (!end || phrase.at == mistake.at);
        });
        if (same != found.end())
            same->names.push_back(name);
        else
            found.push_back({mistake.kind, key, mistake.at, {name}});
    }
    return found;
}

inline std::string say(Phrase const& phrase) {
    auto const names = listed(phrase.names);
    switch (phrase.kind) {
    case MistakeKind::battery_turned:
        return names + " is the wrong way around";
    case MistakeKind::battery_low:
        return names + " is nearly flat";
    case MistakeKind::cell_dead:
        return "a cell of " + names + " is dead";
    case MistakeKind::end_elsewhere:
        return phrase.key + " is on " + names + ", not on " + phrase.at;
    case MistakeKind::leads_exchanged:
        return "the leads on " + names + " are swapped";
    case MistakeKind::not_joined:
        return names + " is not on, or does not conduct";
    case MistakeKind::bypassed:
        return "what belongs on one side of " + names + " is on the other";
    case MistakeKind::across:
        return "something that is not in the plan joins " + names;
    }
    return {};
}

// "A or B is the wrong way around, or J1 is on A-, not on A+": at most three of them, and how many more there are.
inline std::string said(WrongReading const& wrong) {
    constexpr std::size_t most = 3;
    auto const all = phrases(wrong);
    std::string out;
    for (std::size_t p = 0; p < std::min(most, all.size()); ++p)
        out += (p == 0 ? "" : ", or ") + say(all[p]);
    if (all.size() > most) out += fmt::format(", or {} more", all.size() - most);
    return out;
}

// As many decimals as the meter shows; "floating" where there is none.
inline std::string shown(std::optional<Voltage> const& reading, HookupOptions const& options) {
    if (!reading) return "floating";
    auto const volts = reading->value();
    auto const digit = options.resolution ? options.resolution->value() : std::abs(volts) < 20.0 ? 0.01 : 0.1;
    auto const decimals = std::clamp(static_cast<int>(std::ceil(-std::log10(digit) - 1e-9)), 0, 6);
    auto text = fmt::format("{:.{}f} V", volts, decimals);
    if (text.front() == '-' && text.find_first_of("123456789") == std::string::npos) text.erase(0, 1);
    return text;
}

inline std::string quoted(std::string const& name) { return "`" + name + "`"; }

// "turn `SEL` to 1"; empty of what is no selector.
inline std::string turn(Bank const& bank, std::string const& part, bool undo) {
    constexpr std::string_view positions[] = {"off", "1", "2", "both"};
    for (auto const& selector : bank.selectors) {
        if (selector.id != part) continue;
        auto const at = static_cast<std::size_t>(selector.position.value_or(SelectorPosition::first));
        return fmt::format("turn `{}` to {}", part, undo ? "off" : positions[at]);
    }
    return {};
}

inline std::string in_words(HookupAction action, bool undo) {
    switch (action) {
    case HookupAction::land:
        return undo ? "remove" : "land";
    case HookupAction::fit:
        return undo ? "take out fuse" : "fit fuse";
    case HookupAction::close:
        return undo ? "open" : "close";
    case HookupAction::read:
        return "read the receptacle of";
    case HookupAction::open:
        return "open";
    case HookupAction::mate:
        return undo ? "pull the plug of" : "push in the plug of";
    }
    return {};
}

// " (6 AWG, 12 in, red)"
inline std::string copper(Bank const& bank, std::string const& part) {
    for (auto const* runs : {&bank.jumpers, &bank.cables})
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

class SheetWriter {
public:
    SheetWriter(HookupResult const& result, Bank const& bank, HookupOptions const& options)
        : result_(result), bank_(bank), options_(options), is_one_place_(places_of(bank).names.size() < 2) {}

    Sheet write() const {
        Sheet sheet;
        sheet.how_to_read = how_to_read();
        sheet.to_begin_with = to_begin_with();
        if (!result_.left_open.empty())
            sheet.left_open =
                fmt::format("open, and open to the end, as the file has it: {}", quoted_all(result_.left_open));
        for (auto const& battery : result_.batteries)
            sheet.batteries.push_back(alone(battery));
        for (auto const& step : result_.steps)
            sheet.connect.push_back(lines(step));
        while (sheet.dead_steps < result_.steps.size() && before_batteries(result_.steps[sheet.dead_steps]))
            ++sheet.dead_steps;
        sheet.with_ohmmeter = with_ohmmeter();
        sheet.loops = loops();
        sheet.at_the_end = sources_on(bank_);
        std::string left;
        for (auto const& step : result_.disconnect) {
            sheet.disconnect.push_back(lines(step));
            auto& now = sheet.disconnect.back().left;
            if (now == left)
                now.clear();
            else
                left = now;
        }
        return sheet;
    }

private:
    std::string volts(std::optional<Voltage> const& reading) const { return shown(reading, options_); }

    static std::string quoted_all(std::vector<std::string> const& names) {
        std::vector<std::string> all;
        for (auto const& name : names)
            all.push_back(quoted(name));
        return fmt::format("{}", fmt::join(all, ", "));
    }

    // Dead leads and fuses.
    static bool before_batteries(HookupStep const& step) {
        return step.action == HookupAction::fit || (step.action == HookupAction::land && step.dead);
    }

    std::vector<std::string> with_ohmmeter() const {
        std::vector<std::string> lines;
        for (auto const& check : result_.dead)
            lines.push_back((is_one_place_ ? std::string() : check.place + ": ") + checked(check));
        if (!lines.empty())
            lines.push_back(
                "back to DC volts, leads in the volt jacks: an ohmmeter on a battery is ruined, and may burn");
        return lines;
    }

    std::string checked(DeadCheck const& check) const {
        switch (check.kind) {
        case DeadCheckKind::run:
            return fmt::format("`{}`: red on its end at `{}`, black on its end at `{}`: expect less than 1 ohm{}",
                               check.part, check.red, check.black,
                               check.lengthened ? "; one lead of the meter has to be lengthened" : "");
        case DeadCheckKind::loop:
            return fmt::format(
                "`{0}` and `{1}`: clip their ends for `{4}` and `{5}` together; red on the end of `{0}` at "
                "`{2}`, black on the end of `{1}` for `{3}`: expect less than 1 ohm; take the clip off",
                check.part, check.other, check.red, check.black, check.clip, check.onto);
        case DeadCheckKind::apart:
            return fmt::format("`{}`, plug apart: red on `{}`, black on `{}`: expect no continuity", check.part,
                               check.red, check.black);
        case DeadCheckKind::load:
            return fmt::format("{}, wired without a plug: red on `{}`, black on `{}`: {}", quoted_all(check.loads),
                               check.red, check.black, between_leads(check));
        case DeadCheckKind::hull:
            return fmt::format(
                "`{}`: red on its end at `{}`, black on the hull, then on any earth or engine block there: expect {}",
                check.part, check.red,
                check.negative
                    ? "no continuity, except at the one point where the negative is bonded, if the boat has one"
                    : "no continuity");
        }
        return {};
    }

    // A winding, a heater or a lamp is hard to tell from a short; electronics may show anything above it.
    std::string between_leads(DeadCheck const& check) const {
        if (check.ohms) return fmt::format("expect its own {}, and no less", print(*check.ohms));
        std::vector<std::string> low;
        for (auto const& id : check.loads)
            if (may_show_next_to_nothing(id)) low.push_back(id);
        if (low.empty()) return "expect more than 1 ohm, whatever electronics show; less is a short between + and -";
        auto const expected = low.size() == check.loads.size() ? "no continuity" : "more than 1 ohm";
        if (low.size() == 1)
            return fmt::format("lift a lead off {} first, since its own resistance is hard to tell from a short: "
                               "expect {}; land it again",
                               quoted_all(low), expected);
        return fmt::format("lift a lead off each of {} first, since their own resistance is hard to tell from a "
                           "short: expect {}; land them again",
                           quoted_all(low), expected);
    }

    // At rest a lamp's filament and a motor's winding have a tenth of what they have at work, or less (common practice,
    // no source).
    bool may_show_next_to_nothing(std::string const& id) const {
        constexpr double at_work = 20.0; // [ohm] of which a tenth is easily told from a short
        if (std::any_of(bank_.motors.begin(), bank_.motors.end(), [&](auto const& motor) { return motor.id == id; }))
            return true;
        auto const volts = bank_.system.voltage.value_or(12.0 * si::volt);
        for (auto const& load : bank_.loads) {
            if (load.id != id) continue;
            auto const amps = load.current ? *load.current : load.power ? Current(*load.power / volts) : Current{};
            if (load.role == Role::start || amps.value() * at_work > volts.value()) return true;
        }
        return false;
    }

    // What is taken for a battery whose charge the file does not state.
    std::vector<std::string> assumed() const {
        std::vector<std::string> names;
        for (auto const& battery : bank_.batteries)
            if (!battery.charge && !battery.emf && battery.chemistry) names.push_back(battery.id);
        if (names.empty()) return {};
        return {
            fmt::format("{}: the file states no charge, so the expected reading assumes a full battery, and the range "
                        "is widened from empty to full; a stated `charge` narrows it to within {:.3g} % either way",
                        quoted_all(names), options_.charge_within.in_percent())};
    }

    std::vector<std::string> how_to_read() const {
        auto lines = meter_and_ranges();
        auto const assumptions = assumed();
        lines.insert(lines.begin() + 1, assumptions.begin(), assumptions.end());
        return lines;
    }

    std::vector<std::string> meter_and_ranges() const {
        return {fmt::format("meter on DC volts, accurate to {:.3g} % + {}; each battery within {:.3g} % of the charge "
                            "that the file states",
                            100.0 * options_.of_reading, counted(options_.digits, "digit"),
                            options_.charge_within.in_percent()),
                "floating: the two points share no path yet; a meter shows 0 V or drifts near it",
                "a reading outside its range: stop, find out why, and correct it before the next step",
                "what a wrong one may mean is worked out for one mistake at a time, all readings before having been "
                "right"};
    }

    std::vector<std::string> to_begin_with() const {
        std::vector<std::string> lines{"every motor and load off"};
        auto const sources = sources_off(bank_);
        lines.insert(lines.end(), sources.begin(), sources.end());
        lines.push_back("batteries rested for some hours: fresh from a charge or a run they read differently");
        for (auto const& [action, words] : {std::pair{HookupAction::close, "open"},
                                            {HookupAction::fit, "fuses out"},
                                            {HookupAction::mate, "plugs apart"}}) {
            std::vector<std::string> parts;
            for (auto const& step : result_.steps)
                if (step.action == action && turn(bank_, step.part, true).empty() &&
                    std::find(parts.begin(), parts.end(), step.part) == parts.end())
                    parts.push_back(step.part);
            if (!parts.empty()) lines.push_back(fmt::format("{}: {}", words, quoted_all(parts)));
        }
        for (auto const& selector : bank_.selectors)
            if (selector.position != SelectorPosition::off) lines.push_back(turn(bank_, selector.id, true));
        return lines;
    }

    // The end of a conductor that is landed far away is read at its loose end.
    static std::string probe(MeterReading const& right, std::string const& terminal) {
        return terminal == right.loose ? fmt::format("the loose end of `{}`", right.loose_part) : quoted(terminal);
    }

    // "floating", "12.8 V", "floating, or 12.8 V through a load"
    std::string wrong_volts(Cause const& cause) const {
        auto words = volts(cause.reads);
        if (cause.depends_on_load) words += fmt::format(", or {} through a load", volts(cause.through_load));
        return words;
    }

    // "at bow", "by A, then by troll"
    std::string place_of(std::vector<std::string> const& places) const {
        if (is_one_place_ || places.empty()) return {};
        return fmt::format("{}", fmt::join(places, ", then "));
    }

    std::string act_of(HookupAction action, std::string const& part, bool undo) const {
        auto const turned = action == HookupAction::close || action == HookupAction::open
                                ? turn(bank_, part, undo || action == HookupAction::open)
                                : std::string();
        return turned.empty() ? in_words(action, undo) + " " + quoted(part) + seat(action, part) : turned;
    }

    // Of a device that sits on a post.
    std::string seat(HookupAction action, std::string const& part) const {
        for (auto const* devices : {&bank_.breakers, &bank_.fuses})
            for (auto const& device : *devices)
                if (device.id == part && device.on && action == HookupAction::fit) return " on " + quoted(*device.on);
        return {};
    }

    ReadingLines reading(std::string when, MeterReading const& right) const {
        ReadingLines lines{std::move(when),
                           fmt::format("red on {}, black on {}", probe(right, right.red), probe(right, right.black)),
                           "floating",
                           {}};
        if (right.expected)
            lines.expected =
                fmt::format("expect {} ({} to {})", volts(right.expected), volts(right.low), volts(right.high));
        constexpr std::size_t most = 4;
        for (std::size_t g = 0; g < std::min(most, right.wrong.size()); ++g)
            lines.wrong.push_back(wrong_volts(right.wrong[g].causes.front()) + ": " + said(right.wrong[g]));
        if (right.wrong.size() > most)
            lines.wrong.push_back("and " + counted(static_cast<int>(right.wrong.size() - most), "other reading"));
        return lines;
    }

    BatteryLines alone(MeterReading const& battery) const {
        BatteryLines lines{reading("alone", battery),
                           battery.red,
                           battery.black,
                           volts(battery.expected),
                           volts(battery.low),
                           volts(battery.high),
                           {},
                           {},
                           {}};
        for (auto const& wrong : battery.wrong)
            for (auto const& cause : wrong.causes) {
                auto const kind = cause.mistake.kind;
                if (kind == MistakeKind::battery_turned) lines.turned = volts(cause.reads);
                if (kind == MistakeKind::battery_low) lines.nearly_flat = volts(cause.reads);
                if (kind == MistakeKind::cell_dead) lines.dead_cell = volts(cause.reads);
            }
        return lines;
    }

    StepLines lines(HookupStep const& step) const {
        StepLines lines;
        lines.act = act_of(step.action, step.part, false);
        lines.place = place_of(step.places);
        lines.title = lines.act;
        bool const lands = step.action == HookupAction::land;
        if (lands)
            lines.title += fmt::format(": `{}` first, then `{}`{}", step.first, step.last, copper(bank_, step.part));
        if (step.dead) lines.left = "dead on both sides: nothing to read";
        if (step.before) lines.before = reading("before", *step.before);
        if (step.equalizing) lines.flows = flows(*step.equalizing, lands ? "land" : "close");
        if (step.action == HookupAction::read) {
            lines.title += ", its plug apart";
            if (step.after) lines.after = reading("now", *step.after);
            lines.left = step.after && !step.after->expected
                             ? "it shows volts: something feeds it past what is still open; nothing is closed before "
                               "that is corrected"
                             : "wrong sign or wrong volts: the plug stays out until that is corrected";
            return lines;
        }
        if (step.action == HookupAction::mate && !step.live_make) lines.left = "its motor or load still off";
        if (step.live_make)
            lines.left =
                "this makes the circuit, with nothing but a fuse or nothing at all to open it: every load off "
                "before; a switch or breaker is needed here, except for what must never be left off, such as a bilge pump";
        if (step.after) lines.after = reading("after", *step.after);
        return lines;
    }

    std::vector<std::string> flows(Equalizing const& loop, std::string_view verb) const {
        constexpr double nothing = 5e-4; // [A]
        std::vector<std::string> said{
            loop.at_most.value() < nothing
                ? std::string("this closes a loop; with such batteries nothing should flow in it")
                : fmt::format("this closes a loop: {} at first, up to {} with the charges at their worst",
                              print(loop.expected), print(loop.at_most))};
        if (loop.gap_limit)
            said.push_back(fmt::format("do not {} it above {} either way: `{}` would carry more than it may", verb,
                                       volts(loop.gap_limit), loop.limited_by));
        return said;
    }

    StepLines lines(DisconnectStep const& step) const {
        StepLines lines;
        lines.act = act_of(step.undoes, step.part, true);
        lines.place = place_of(step.places);
        lines.title = lines.act;
        if (step.undoes == HookupAction::land)
            lines.title += fmt::format(": `{}` first, then `{}`", step.first, step.last);
        if (step.then) lines.after = reading("then", *step.then);
        lines.left = step.still_live
                         ? fmt::format("still live: {} between `{}` and `{}`", volts(step.still_live->expected),
                                       step.still_live->red, step.still_live->black)
                         : std::string("no more than a single battery is live now");
        return lines;
    }

    std::string loops() const {
        bool const closes = std::any_of(result_.steps.begin(), result_.steps.end(),
                                        [](auto const& step) { return step.equalizing.has_value(); });
        if (!closes) return "no step closes a loop through batteries";
        return fmt::format("the most that a gap reads before it closes a loop is {}; {}", volts(result_.largest_gap),
                           result_.proven ? "no other order of these steps has less"
                                          : "there are too many orders to try them all");
    }

    HookupResult const& result_;
    Bank const& bank_;
    HookupOptions const& options_;
    bool is_one_place_; // the whole boat
};

} // namespace internal::hookup_sheet

BANKWRIGHT_INLINE hookup_words::Sheet hookup_words::sheet(HookupResult const& result, Bank const& bank,
                                                          HookupOptions const& options) {
    return internal::hookup_sheet::SheetWriter(result, bank, options).write();
}

} // namespace bankwright
