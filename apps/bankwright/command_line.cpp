#include "command_line.hpp"

#include "bankwright/text/closest.hpp"
#include "bankwright/text/escape.hpp"
#include "bankwright/version.hpp"
#include "common_options.hpp"

#include <algorithm>
#include <deque>
#include <memory>
#include <string_view>

#include <CLI/CLI.hpp>

namespace {

using namespace bankwright;

constexpr char about[] = "Describe a small boat's battery bank in one file, find what is miswired, undersized or "
                         "unprotected, and solve its voltages and currents.";

Run tell(std::string text) {
    return [text = std::move(text)](bool) { return Outcome{text, {}, ExitCode::clean}; };
}

Run misuse(std::string const& problem) {
    return [problem](bool) {
        return Outcome{{}, "bankwright: " + problem + "\nbankwright --help shows how to use it\n", ExitCode::unusable};
    };
}

// The options of one command, given to the parser. What needs a reader of its own is read once the parser has found
// nothing wrong.
class Bound {
public:
    Bound(CLI::App& command, Usage usage) : command_(command), usage_(std::move(usage)) {
        for (auto const& option : usage_.options) {
            auto* const added = std::visit([&](auto const& kind) { return add(option, kind); }, option.kind);
            if (!option.stands_for.empty()) added->type_name(option.stands_for);
            if (option.is_required) added->required();
            for (auto const& other : option.excludes)
                added->excludes(command.get_option(other));
        }
        command.footer(usage_.closing);
    }

    bool is_asked() const { return command_.parsed(); }

    Run run() const {
        if (usage_.problem)
            if (auto const problem = usage_.problem(); !problem.empty()) return misuse(problem);
        for (auto const& [words, read, option] : late_)
            if (option->count() > 0)
                for (auto const& word : words)
                    if (auto const problem = read(word); !problem.empty()) return misuse(problem);
        return usage_.run;
    }

private:
    struct Late { // read once the parser is through
        std::vector<std::string> words;
        Reader read;
        CLI::Option* option;
    };

    Late& late(Reader read) { return late_.emplace_back(Late{{}, std::move(read), nullptr}); }

    CLI::Option* add(Option const& option, option::Flag const& flag) {
        auto& late = this->late([take = flag.take](std::string const&) {
            take();
            return std::string();
        });
        late.words.emplace_back();
        return late.option = command_.add_flag(option.names, option.help);
    }
    CLI::Option* add(Option const& option, option::Text const& text) {
        return command_.add_option(option.names, text.target, option.help);
    }
    CLI::Option* add(Option const& option, option::FileName const& file) {
        auto& late = this->late([&name = file.target, option = option.names](std::string const&) {
            return name.empty() ? option + ": a file needs a name, not \"\"" : std::string();
        });
        late.words.emplace_back();
        return late.option = command_.add_option(option.names, file.target, option.help);
    }
    CLI::Option* add(Option const& option, option::Texts const& texts) {
        return command_.add_option(option.names, texts.target, option.help);
    }
    CLI::Option* add(Option const& option, option::Typed const& typed) {
        auto& late = this->late(typed.read);
        return late.option =
                   command_.add_option(option.names, late.words, option.help)->expected(1)->allow_extra_args(false);
    }
    CLI::Option* add(Option const& option, option::List const& list) {
        auto& late = this->late(list.read);
        late.option = command_.add_option(option.names, late.words, option.help);
        return late.option->delimiter(',')->allow_extra_args(false);
    }
    CLI::Option* add(Option const& option, option::Choice const& choice) {
        auto& late = this->late([take = choice.take](std::string const& word) {
            take(word);
            return std::string();
        });
        auto& word = late.words.emplace_back(choice.usual);
        late.option = command_.add_option(option.names, word, option.help)->check(CLI::IsMember(choice.words));
        return choice.usual.empty() ? late.option : late.option->capture_default_str();
    }
    template <class Integer>
    CLI::Option* add(Option const& option, option::Whole<Integer> const& whole) {
        auto* const added =
            command_.add_option(option.names, whole.target, option.help)->check(CLI::Range(whole.least, whole.most));
        bool const has_default = whole.least <= whole.target && whole.target <= whole.most;
        return has_default ? added->capture_default_str() : added; // else the help says what is taken instead
    }
    CLI::Option* add(Option const& option, option::Seed const& seed) {
        return command_.add_option(option.names, seed.target, option.help)->capture_default_str();
    }

    CLI::App& command_;
    Usage usage_;
    std::deque<Late> late_; // the parser holds addresses within it
};

// Only those that are named among the arguments get their options: making all of them took a quarter of the time of
// checking one file.
std::deque<Bound> add_commands(CLI::App& app, int argc, char const* const* argv) {
    std::deque<Bound> bound;
    for (auto const& command : all_commands()) {
        auto& added = *app.add_subcommand(command.name, command.about);
        bool const is_named =
            std::any_of(argv, argv + std::max(0, argc), [&](std::string_view word) { return word == command.name; });
        if (is_named) bound.emplace_back(added, command.usage());
    }
    return bound;
}

// A first word that is neither a command nor an option; empty if there is none.
std::string unknown_command(int argc, char const* const* argv) {
    std::string const word = argc > 1 ? argv[1] : "-";
    std::vector<std::string> known;
    for (auto const& command : all_commands())
        known.emplace_back(command.name);
    if (word.substr(0, 1) == "-" || std::count(known.begin(), known.end(), word) > 0) return {};
    auto const nearest = closest(word, known);
    return "there is no command `" + terminal_safe(word) + "`" +
           (nearest ? "; did you mean `" + *nearest + "`?" : std::string());
}

} // namespace

Run read_command_line(int argc, char const* const* argv) {
    CLI::App app(about, "bankwright");
    app.set_version_flag("--version", "bankwright " BANKWRIGHT_VERSION);
    app.require_subcommand(1);
    app.footer(with_statuses("bankwright COMMAND --help says more.\nExample: bankwright check boat.toml"));
    auto const bound = add_commands(app, argc, argv);

    if (auto const problem = unknown_command(argc, argv); !problem.empty()) return misuse(problem);
    try {
        app.parse(argc, argv);
    } catch (CLI::CallForVersion const& version) {
        return tell(std::string(version.what()) + "\n");
    } catch (CLI::CallForHelp const&) {
        return tell(app.help());
    } catch (CLI::ParseError const& error) {
        return misuse(terminal_safe(error.what()));
    }
    auto const asked = std::find_if(bound.begin(), bound.end(), [](Bound const& one) { return one.is_asked(); });
    return asked->run();
}
