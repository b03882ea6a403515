#include "hookup_dialogue.hpp"

#include "bankwright/config/write_log.hpp"
#include "bankwright/reports/cautions.hpp"
#include "bankwright/reports/hookup_words.hpp"
#include "bankwright/reports/log_words.hpp"
#include "bankwright/reports/style.hpp"
#include "bankwright/reports/tally.hpp"
#include "bankwright/text/escape.hpp"
#include "output_file.hpp"
#include "typed_line.hpp"
#include "typed_reading.hpp"

#include <array>
#include <cstdio>
#include <ctime>
#include <optional>
#include <string>
#include <string_view>

#include <unistd.h>

using namespace bankwright;

namespace {

// Names stand bare at a terminal.
std::string bare(std::string_view words) {
    std::string out;
    for (char const c : words)
        if (c != '`') out += c;
    return out;
}

void say(std::string_view text) {
    std::fwrite(text.data(), 1, text.size(), stdout);
    std::fflush(stdout);
}
void say_line(std::string_view words) { say(bare(words) + "\n"); }

std::string now() {
    auto const seconds = std::time(nullptr);
    std::tm local{};
    localtime_r(&seconds, &local);
    std::array<char, 32> text{};
    std::strftime(text.data(), text.size(), "%Y-%m-%d %H:%M", &local);
    return text.data();
}

class Dialogue {
public:
    Dialogue(HookupJudge const& judge, LoggedHookup& logged, bool color)
        : judge_(judge), logged_(logged), style_{.color = color}, asked_(log_words::asked(logged)) {}

    // False where the log could not be written.
    bool run() {
        begin();
        if (!keep()) return false;
        for (;;) {
            judge();
            auto const& judged = logged_.judged;
            if (judged.state == HookupState::complete) return end();
            if (judged.state == HookupState::stopped && said_stop_ != logged_.log.entries.size()) stop();
            auto const answer = ask();
            if (answer == Answer::quit) return true;
            if (answer == Answer::none) continue;
            if (!keep()) return false;
            if (answer == Answer::given) judge(), tell();
        }
    }

private:
    enum class Answer { given, taken_back, none, quit };

    void judge() { logged_.judged = judge_.judge(logged_.log.entries); }

    void begin() {
        auto const sheet = hookup_words::sheet(logged_.sheet, logged_.bank, logged_.options);
        say(paint(Ink::strong, terminal_safe(logged_.file), style_) + ": hook-up, " +
            counted(static_cast<int>(logged_.questions.size()), "question") + "; each answer is kept in " +
            terminal_safe(logged_.log_file) + "\n");
        say("Type what the meter shows: 12.7; OL where there is no path; ok where it is as expected.\n"
            "? says what a wrong reading means, back takes the last answer back, quit ends.\n");
        if (auto const changed = log_words::changed(logged_); !changed.empty()) say_line("\n" + changed);
        if (!logged_.log.entries.empty()) return;
        say(paint(Ink::strong, "\nbefore you touch the bank:\n", style_));
        for (auto const caution : hookup_cautions())
            say_line("  - " + std::string(caution));
        say(paint(Ink::strong, "\n" + std::string(hookup_words::to_begin_with) + ":\n", style_));
        for (auto const& one : sheet.to_begin_with)
            say_line("  - " + one);
        if (!sheet.left_open.empty()) say_line("  - " + sheet.left_open);
    }

    // On the disk, or why not.
    bool keep() {
        auto const trouble = write_file({.name = logged_.log_file, .is_durable = true}, write(logged_.log));
        if (trouble.empty()) return true;
        trouble_ = trouble;
        return false;
    }

    bool end() {
        say(paint(Ink::strong, "\nall read, all right: ", style_) + "the bank is hooked up\n");
        return true;
    }

    // What stopped, why, and what is to be read next.
    void stop() {
        said_stop_ = logged_.log.entries.size();
        say(paint(Ink::error, bare(log_words::verdict(logged_, asked_, *logged_.judged.at)), style_) + "\n");
        for (auto const& cause : log_words::causes(logged_))
            say_line("  " + cause);
        if (auto const further = log_words::further(logged_))
            say(further->is_ohms ? "to find out, with the ohmmeter:\n" : "to find out:\n");
        else
            say_line(log_words::put_right(logged_));
    }

    // Go, in one line; a stop is told with its cause.
    void tell() {
        auto const& entry = logged_.log.entries.back();
        if (entry.when == LogWhen::also || logged_.judged.state == HookupState::stopped) return;
        for (std::size_t q = 0; q < logged_.questions.size(); ++q)
            if (auto const& answer = logged_.judged.answers[q];
                answer && answer->entry + 1 == logged_.log.entries.size())
                say("  " + paint(Ink::mark, bare(log_words::verdict(logged_, asked_, q)), style_) + "\n");
    }

    bool with_ohmmeter(LogWhen when) const {
        return when == LogWhen::run || when == LogWhen::loop || when == LogWhen::apart || when == LogWhen::load ||
               when == LogWhen::hull;
    }

    Answer ask() {
        auto const further = is_correcting_ ? std::nullopt : log_words::further(logged_);
        auto const& question = logged_.questions[*logged_.judged.at];
        auto const& asked = asked_[*logged_.judged.at];
        if (further)
            say_line("  " + further->read);
        else
            head(question, asked);
        say(further || question.when != LogWhen::done ? "> " : "done? > ");
        auto const typed = typed_line();
        if (!typed || *typed == "quit" || *typed == "q") return quit();
        if (*typed == "back" || *typed == "b") return back();
        if (*typed == "?" || *typed == "help") return explain(asked, further);
        if (further && (*typed == "again" || *typed == "fixed")) {
            is_correcting_ = true;
            return Answer::none;
        }
        LogEntry entry{question.when, question.part, {}, {}, {}, now()};
        bool const ohms = further ? further->is_ohms : with_ohmmeter(question.when);
        if (further) {
            auto const& next = *logged_.judged.found->next;
            entry = {LogWhen::also, {}, next.red, next.black, {}, now()};
        }
        if (entry.when == LogWhen::done && (typed->empty() || *typed == "done")) return give(std::move(entry));
        if (typed->empty()) return Answer::none;
        auto const read = typed_reading(*typed, ohms);
        entry.reads = read.reads;
        auto const problem = read.problem.empty() ? std::string(unfit_answer(entry)) : read.problem;
        if (!problem.empty()) {
            say("  " + problem.substr(problem.find_first_not_of(' ')) + "\n");
            return Answer::none;
        }
        return give(std::move(entry));
    }

    void head(HookupQuestion const& question, log_words::Asked const& asked) {
        if (question.when == LogWhen::alone)
            say(paint(Ink::strong, "\n" + question.part + " alone\n", style_));
        else if (!asked.act.empty())
            say(paint(Ink::strong, "\n" + bare(asked.act) + "\n", style_));
        else
            say(paint(Ink::strong, "\nwith the ohmmeter\n", style_));
        if (!asked.read.empty()) say_line("  " + asked.read + ": " + asked.expected);
    }

    Answer give(LogEntry entry) {
        if (entry.when != LogWhen::also) is_correcting_ = false;
        logged_.log.entries.push_back(std::move(entry));
        return Answer::given;
    }

    Answer back() {
        is_correcting_ = false;
        if (logged_.log.entries.empty()) {
            say("  there is no answer before this one\n");
            return Answer::none;
        }
        logged_.log.entries.pop_back();
        said_stop_.reset();
        return Answer::taken_back;
    }

    Answer explain(log_words::Asked const& asked, std::optional<log_words::Further> const& further) {
        auto const& lines = further ? further->expected : asked.wrong;
        for (auto const& one : lines)
            say_line("  " + one);
        if (lines.empty())
            say(asked.read.empty() ? "  Enter when it is done\n" : "  anything else: stop, and say what it reads\n");
        if (further) say("  or `again`: it has been corrected, and the reading that stopped is taken once more\n");
        return Answer::none;
    }

    Answer quit() {
        say("\nkept in " + terminal_safe(logged_.log_file) + "; the same command goes on from there\n");
        return Answer::quit;
    }

public:
    std::string const& trouble() const { return trouble_; }

private:
    HookupJudge const& judge_;
    LoggedHookup& logged_;
    TextStyle style_;
    std::vector<log_words::Asked> asked_;
    std::optional<std::size_t> said_stop_; // entries when it was last told
    bool is_correcting_ = false;           // the reading that stopped is taken again instead of another
    std::string trouble_;
};

} // namespace

bool somebody_answers() { return isatty(STDIN_FILENO) == 1; }

Outcome ask_hookup(HookupJudge const& judge, LoggedHookup logged, bool color) {
    Dialogue dialogue(judge, logged, color);
    if (!dialogue.run())
        return {
            {}, "bankwright: " + terminal_safe(logged.log_file) + ": " + dialogue.trouble() + "\n", ExitCode::unusable};
    return {{}, {}, logged.judged.state == HookupState::stopped ? ExitCode::found : ExitCode::clean};
}
