// Bodies of hookup_judge.hpp.
#pragma once

#include "bankwright/analyses/hookup.hpp"
#include "bankwright/analyses/hookup_judge.hpp"
#include "bankwright/graph/as_index.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <string>
#include <utility>

namespace bankwright {

namespace internal::hookup_judging {

// Common practice, no source.
inline constexpr double drifts = 0.5;      // [V] what a meter may show whose leads have no path between them
inline constexpr double continuous = 1.0;  // [ohm] less is a path of copper
inline constexpr double isolated = 1000.0; // [ohm] more is none

inline bool with_ohmmeter(LogWhen when) {
    return when == LogWhen::run || when == LogWhen::loop || when == LogWhen::apart || when == LogWhen::load ||
           when == LogWhen::hull;
}

inline bool expects_path(LogWhen when) { return when == LogWhen::run || when == LogWhen::loop; }

// Of a load that hangs on its leads: less is close to a short.
inline double least_ohms(DeadCheck const& check) {
    return check.ohms ? std::min(continuous, 0.5 * check.ohms->value()) : continuous;
}

inline bool is_right(Shown const& shown, HookupQuestion const& question, MeterReading const* right,
                     HookupResult const& sheet) {
    if (std::holds_alternative<AsExpected>(shown)) return true;
    if (with_ohmmeter(question.when)) {
        auto const& check = sheet.dead[question.index];
        auto const* ohms = std::get_if<Resistance>(&shown);
        if (question.when == LogWhen::hull && check.negative) return true; // it may be bonded there
        if (question.when == LogWhen::load) return !ohms || ohms->value() >= least_ohms(check);
        if (!ohms) return !expects_path(question.when);
        return expects_path(question.when) ? std::abs(ohms->value()) < continuous : ohms->value() > isolated;
    }
    if (!right) return true;
    auto const* read = std::get_if<Voltage>(&shown);
    double const volts = read ? read->value() : 0.0;
    if (!right->expected) return std::abs(volts) <= drifts;
    constexpr double rounding = 1e-9;
    return volts >= right->low.value() - rounding && volts <= right->high.value() + rounding;
}

} // namespace internal::hookup_judging

BANKWRIGHT_INLINE std::string_view unfit_answer(LogEntry const& entry) {
    bool const ohms = internal::hookup_judging::with_ohmmeter(entry.when);
    if (entry.when == LogWhen::done && !std::holds_alternative<AsExpected>(entry.reads))
        return "nothing is read there; expected \"ok\"";
    if (ohms && std::holds_alternative<Voltage>(entry.reads))
        return "an ohmmeter is asked for; expected a resistance, \"OL\" or \"ok\"";
    if (!ohms && entry.when != LogWhen::also && std::holds_alternative<Resistance>(entry.reads))
        return "a voltmeter is asked for; expected a voltage, \"OL\" where it floats, or \"ok\"";
    if (entry.when == LogWhen::also && std::holds_alternative<AsExpected>(entry.reads))
        return "nothing is expected there; expected what was read";
    return {};
}

BANKWRIGHT_INLINE HookupOptions hookup_options(HookupLog const& log, HookupOptions options) {
    if (log.of_reading) options.of_reading = *log.of_reading;
    if (log.digits) options.digits = *log.digits;
    if (log.resolution) options.resolution = log.resolution;
    return options;
}

class HookupJudge::Kept {
public:
    Kept(Bank const& of, HookupOptions const& as)
        : bank(of), options(as), result(hookup(of, as)), questions(hookup_questions(of, result)), partial(of),
          states(question_states(questions, result, partial)) {}

    Bank bank;
    HookupOptions options;
    HookupResult result;
    std::vector<HookupQuestion> questions;
    PartialBank partial;
    std::vector<QuestionState> states; // by question
};

class HookupJudge::Judging {
public:
    Judging(Kept const& kept, std::vector<LogEntry> const& entries) : kept_(kept), entries_(entries) {
        judged_.answers.resize(kept.questions.size());
    }

    HookupJudgment judge() {
        for (std::size_t e = 0; e < entries_.size(); ++e) {
            if (auto const problem = unfit_answer(entries_[e]); !problem.empty())
                throw std::invalid_argument("`" + entries_[e].part + "`: " + std::string(problem));
            take(e);
        }
        settle();
        return std::move(judged_);
    }

private:
    static constexpr auto none = static_cast<std::size_t>(-1);

    void take(std::size_t e) {
        auto const& entry = entries_[e];
        if (entry.when == LogWhen::also) {
            judged_.further.push_back(e);
            return;
        }
        auto const question = question_of(entry);
        if (question == none) {
            judged_.strays.push_back(e);
            return;
        }
        auto const& asked = kept_.questions[question];
        auto const* const right = right_reading(asked, kept_.result);
        JudgedAnswer answer{e, internal::hookup_judging::is_right(entry.reads, asked, right, kept_.result), false};
        if (auto const limit = gap_limit(asked); limit && answer.is_right)
            if (auto const* volts = std::get_if<Voltage>(&entry.reads))
                answer.is_over_gap = std::abs(volts->value()) > limit->value();
        bool const stops = !answer.is_right || answer.is_over_gap;
        if (stop_ != question) tried_.clear();
        if (stops) tried_.push_back(e);
        if (!stops || stop_ != question) judged_.further.clear();
        if (stops)
            stop_ = question;
        else if (stop_ == question)
            stop_ = none;
        judged_.answers[question] = answer;
        last_ = std::max(last_, static_cast<std::ptrdiff_t>(question));
    }

    // The one that stopped; else the first open one that is asked so; else the last that was answered.
    std::size_t question_of(LogEntry const& entry) const {
        std::size_t answered = none;
        auto const fits = [&](std::size_t q) {
            return kept_.questions[q].when == entry.when && kept_.questions[q].part == entry.part;
        };
        if (stop_ != none && fits(stop_)) return stop_;
        for (std::size_t q = 0; q < kept_.questions.size(); ++q) {
            if (!fits(q)) continue;
            if (!judged_.answers[q]) return q;
            answered = q;
        }
        return answered;
    }

    std::optional<Voltage> gap_limit(HookupQuestion const& question) const {
        if (question.when != LogWhen::before) return std::nullopt;
        auto const& equalizing = kept_.result.steps[question.index].equalizing;
        return equalizing ? equalizing->gap_limit : std::nullopt;
    }

    void settle() {
        for (std::size_t q = 0; q < kept_.questions.size(); ++q) {
            auto const& answer = judged_.answers[q];
            if (!answer) {
                // What was made and not said to be shows in what is read afterwards.
                if (kept_.questions[q].when == LogWhen::done && static_cast<std::ptrdiff_t>(q) < last_) continue;
                if (static_cast<std::ptrdiff_t>(q) < last_) judged_.left_out.push_back(q);
                if (!judged_.at) judged_.at = q;
            } else if (!answer->is_right || answer->is_over_gap) {
                judged_.at = q;
                judged_.state = HookupState::stopped;
                if (!answer->is_right) judged_.found = search(q);
                judged_.again = judged_.found && tried_.size() < 2 && judged_.further.empty() && is_doubted();
                return;
            }
        }
        if (!judged_.at) judged_.state = HookupState::complete;
    }

    bool is_doubted() const {
        constexpr double doubted = 0.2;
        for (auto const& chance : judged_.found->chances)
            if (chance.alike.empty() && chance.probability > doubted) return true;
        return false;
    }

    static bool is_like(Shown const& one, Shown const& other) {
        auto const *a = std::get_if<Voltage>(&one), *b = std::get_if<Voltage>(&other);
        if (!a || !b) return one.index() == other.index();
        return std::abs(a->value() - b->value()) < 0.2 + 0.02 * std::abs(b->value());
    }

    MistakeFound search(std::size_t stopped) const {
        auto bank = kept_.bank;
        std::vector<double> spread(bank.batteries.size());
        std::vector<char> is_right(bank.batteries.size(), 0);
        HookupMeter const meter(kept_.bank, kept_.partial, kept_.options);
        for (std::size_t b = 0; b < bank.batteries.size(); ++b) {
            auto const& range = meter.range(b);
            spread[b] = (range.high - range.low) / std::sqrt(12.0);
        }
        for (std::size_t q = 0; q < kept_.questions.size(); ++q) {
            auto const& question = kept_.questions[q];
            auto const& answer = judged_.answers[q];
            if (question.when != LogWhen::alone || !answer || !answer->is_right) continue;
            is_right[question.index] = 1;
            if (auto const* volts = std::get_if<Voltage>(&entries_[answer->entry].reads)) {
                bank.batteries[question.index].emf = *volts;
                spread[question.index] = meter.error(volts->value()) / std::sqrt(3.0);
            }
        }
        PartialBank const partial(bank);
        MistakeSearch const search(bank, partial, kept_.options, std::move(spread));
        std::vector<Evidence> evidence;
        for (std::size_t q = 0; q < kept_.questions.size(); ++q)
            if (auto const& answer = judged_.answers[q]; answer && answer->is_right && q != stopped)
                add(evidence, q, entries_[answer->entry]);
        // What read otherwise before was read before something was corrected.
        for (auto const e : tried_)
            if (is_like(entries_[e].reads, entries_[tried_.back()].reads)) add(evidence, stopped, entries_[e]);
        for (auto const e : judged_.further)
            add_further(evidence, stopped, entries_[e]);
        auto const& state = kept_.states[stopped];
        auto there = state.made; // what is made, about to be, or in the hand
        if (state.pending >= 0) there[as_index(state.pending)] = 1;
        for (auto const& read : evidence)
            for (auto const c : read.in_hand)
                there[as_index(c)] = 1;
        return search.search(evidence, suspected_mistakes(bank, partial, search.places(), is_right, there));
    }

    void add(std::vector<Evidence>& evidence, std::size_t q, LogEntry const& entry) const {
        auto const& question = kept_.questions[q];
        if (question.when == LogWhen::done || question.when == LogWhen::hull) return;
        Evidence read;
        read.made = kept_.states[q].made;
        read.pending = kept_.states[q].pending;
        if (internal::hookup_judging::with_ohmmeter(question.when)) {
            auto const& check = kept_.result.dead[question.index];
            read.is_ohms = true;
            read.red = kept_.partial.node(check.red);
            read.black = kept_.partial.node(check.black);
            if (!check.clip.empty()) {
                read.clips.emplace_back(kept_.partial.node(check.clip), kept_.partial.node(check.onto));
                for (auto const* part : {&check.part, &check.other})
                    if (int const c = connection_of(kept_.partial, *part); c >= 0 && !read.made[as_index(c)])
                        read.in_hand.push_back(c);
            }
            bool const expected = internal::hookup_judging::expects_path(question.when);
            auto const* ohms = std::get_if<Resistance>(&entry.reads);
            bool const joined = std::holds_alternative<AsExpected>(entry.reads)
                                    ? expected
                                    : ohms && std::abs(ohms->value()) < internal::hookup_judging::continuous;
            read.reads = joined ? 1.0 : 0.0;
        } else {
            auto const* right = right_reading(question, kept_.result);
            read.red = kept_.partial.node(right->red);
            read.black = kept_.partial.node(right->black);
            auto const* volts = std::get_if<Voltage>(&entry.reads);
            bool const as_expected = std::holds_alternative<AsExpected>(entry.reads) && right->expected;
            read.reads = volts ? volts->value() : as_expected ? right->expected->value() : 0.0;
        }
        evidence.push_back(std::move(read));
    }

    void add_further(std::vector<Evidence>& evidence, std::size_t stopped, LogEntry const& entry) const {
        Evidence read;
        read.made = kept_.states[stopped].made;
        read.red = kept_.partial.node(entry.red);
        read.black = kept_.partial.node(entry.black);
        read.is_ohms = internal::hookup_judging::with_ohmmeter(kept_.questions[stopped].when);
        if (auto const* ohms = std::get_if<Resistance>(&entry.reads))
            read.reads = std::abs(ohms->value()) < internal::hookup_judging::continuous ? 1.0 : 0.0;
        else if (auto const* volts = std::get_if<Voltage>(&entry.reads))
            read.reads = volts->value();
        evidence.push_back(std::move(read));
    }

    Kept const& kept_;
    std::vector<LogEntry> const& entries_;
    HookupJudgment judged_;
    std::size_t stop_ = none;        // the question whose answer was wrong
    std::vector<std::size_t> tried_; // entries that answered it
    std::ptrdiff_t last_ = -1;       // the furthest question answered
};

BANKWRIGHT_INLINE HookupJudge::HookupJudge(Bank const& bank, HookupOptions const& options)
    : kept_(std::make_unique<Kept const>(bank, options)) {}
BANKWRIGHT_INLINE HookupJudge::~HookupJudge() = default;
BANKWRIGHT_INLINE HookupResult const& HookupJudge::sheet() const { return kept_->result; }
BANKWRIGHT_INLINE std::vector<HookupQuestion> const& HookupJudge::questions() const { return kept_->questions; }
BANKWRIGHT_INLINE HookupJudgment HookupJudge::judge(std::vector<LogEntry> const& entries) const {
    return Judging(*kept_, entries).judge();
}

} // namespace bankwright
