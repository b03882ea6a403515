#include "wish_questions.hpp"

#include "bankwright/text/escape.hpp"
#include "typed_line.hpp"

#include <array>
#include <cstdio>
#include <string>
#include <utility>

#include <unistd.h>

using namespace bankwright;

namespace {

struct Question {
    WishPart part;
    std::string_view text;
    std::string_view usual; // empty: it may stay open, or has to be answered
    std::string_view open;  // what an empty answer means where nothing is usual
    std::string_view help;
};

constexpr std::array questions{
    Question{WishPart::system, "System voltage", "36 V", "",
             "What the motor's label says: 12, 24, 36 or 48 V. A bare number is volts."},
    Question{
        WishPart::motor, "Motor at full throttle", "45 A", "",
        "Amperes on its label are best: `45 A` or just `45`. Watts (`1600 W`) and pounds of thrust (`80 lb`) do too;\n"
        "  from thrust the current is estimated."},
    Question{WishPart::run, "From the battery box to the receptacle, one way", "20 ft", "",
             "Along the way that the wire goes, not as the crow flies. A bare number is feet; `6 m` does too."},
    Question{
        WishPart::runtime, "How long must it run", "2 h", "",
        "Until the batteries are down to their reserve, half for lead-acid and a fifth for lithium. A bare number is\n"
        "  hours; `90 min` and `1:30` do too."},
    Question{
        WishPart::throttle, "At which throttle must it run that long", "100 %", "",
        "Few run flat out for hours: half throttle takes about an eighth of the power. Wires and breaker are sized\n"
        "  for full throttle all the same."},
    Question{WishPart::chemistry, "Chemistry: flooded, agm, gel or lithium", "", "any",
             "Leave it open to see them side by side. Lithium stands for LiFePO4."},
    Question{WishPart::battery, "Batteries that you have, by their label", "", "none",
             "Voltage, chemistry and capacity, as in `12 V AGM 100 Ah`. Leave it open to choose from usual ones."},
    Question{WishPart::charger, "Charger for the whole bank, in amperes", "", "none",
             "What it gives at most, such as `10 A`. It gets a fuse at the battery and leads of its own."},
};

enum class Move { on, back, quit };

void say(std::string const& text) { std::fputs(text.c_str(), stderr); }

Move ask(Question const& question, WishWords& answers) {
    auto& answer = answers.of(question.part);
    auto const offered = answer.empty() ? std::string(question.usual) : answer;
    auto const shown = offered.empty() ? std::string(question.open) : offered;
    for (;;) {
        say(std::string(question.text) + " [" + shown + "]: ");
        auto const typed = typed_line();
        if (!typed || *typed == "quit" || *typed == "q") return Move::quit;
        if (*typed == "back" || *typed == "b") return Move::back;
        if (*typed == "?" || *typed == "help") {
            say("  " + std::string(question.help) + "\n");
            continue;
        }
        auto const text = typed->empty() ? offered : *typed;
        if (text.empty() || (!question.open.empty() && (text == question.open || text == "no"))) {
            answer.clear();
            return Move::on;
        }
        auto const read = read_answer(question.part, text);
        if (read.problem.empty()) {
            answer = read.understood;
            say("  " + read.understood + "\n");
            return Move::on;
        }
        say("  " + read.problem + "\n");
    }
}

std::size_t place_of(WishPart part) {
    for (std::size_t i = 0; i < questions.size(); ++i)
        if (questions[i].part == part) return i;
    return 0;
}

} // namespace

bool can_ask() { return isatty(STDIN_FILENO) == 1 && isatty(STDERR_FILENO) == 1; }

std::optional<WishWords> ask_for_wish(WishWords answers, std::optional<WishProblem> const& problem) {
    std::size_t at = 0;
    if (problem) {
        say("no bank can be planned from this: " + std::string(name(problem->part)) + " " + problem->message + "\n  " +
            problem->help + "\n");
        at = place_of(problem->part);
    } else {
        say("Enter takes what stands in brackets; `?` explains, `back` goes back, `quit` ends.\n");
    }
    while (at < questions.size()) {
        auto const move = ask(questions[at], answers);
        if (move == Move::quit) return std::nullopt;
        if (move == Move::on) ++at;
        if (move == Move::back && at > 0) --at;
    }
    return answers;
}

std::optional<std::size_t> ask_which(std::size_t count, std::string const& side_by_side) {
    if (count < 2) return 0;
    say("\n" + side_by_side);
    for (;;) {
        say("Which one [1]: ");
        auto const typed = typed_line();
        if (!typed || *typed == "quit" || *typed == "q") return std::nullopt;
        if (typed->empty()) return 0;
        if (*typed == "?") {
            say("  The number of a bank. 1 has the fewest strings in parallel, and is the lightest of those.\n");
            continue;
        }
        if (typed->size() == 1 && (*typed)[0] >= '1' && static_cast<std::size_t>((*typed)[0] - '0') <= count)
            return static_cast<std::size_t>((*typed)[0] - '1');
        say("  a number from 1 to " + std::to_string(count) + "\n");
    }
}

std::optional<std::string> ask_for_file() {
    std::string name = "bank.toml";
    say("\n");
    for (;;) {
        say("Name of the file [" + name + "]: ");
        auto const typed = typed_line();
        if (!typed || *typed == "quit" || *typed == "q") return std::nullopt;
        if (*typed == "?") {
            say("  It holds the bank as text; the other commands read it, and an editor changes it.\n");
            continue;
        }
        if (!typed->empty()) name = *typed;
        if (access(name.c_str(), F_OK) != 0) return name;
        say("  " + terminal_safe(name) + " exists; type yes to replace it, or another name: ");
        auto const second = typed_line();
        if (!second || *second == "quit" || *second == "q") return std::nullopt;
        if (*second == "yes") return name;
        if (!second->empty()) name = *second;
    }
}
