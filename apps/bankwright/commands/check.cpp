#include "commands/check.hpp"

#include "bank_files.hpp"
#include "bankwright/reports/findings_json.hpp"
#include "bankwright/reports/findings_text.hpp"
#include "bankwright/reports/junit.hpp"
#include "bankwright/reports/sarif.hpp"
#include "bankwright/reports/tally.hpp"
#include "bankwright/rules/catalog.hpp"
#include "bankwright/text/escape.hpp"
#include "checked_file.hpp"
#include "common_options.hpp"
#include "folders.hpp"
#include "output_file.hpp"
#include "progress.hpp"
#include "rule_names.hpp"

#include <algorithm>
#include <exception>
#include <utility>

#include <fmt/format.h>

using namespace bankwright;

namespace {

// What counts for one file: the command line, then its folder's settings, then what is usual.
struct Terms {
    Level fail_on = Level::error;
    CheckOptions rules;
};

Terms terms_of(Settings const& asked, Settings const& of_folder) {
    auto const list = [](auto const& first, auto const& second) {
        return first ? *first : second.value_or(std::vector<std::string>());
    };
    return {asked.fail_on ? *asked.fail_on : of_folder.fail_on.value_or(Level::error),
            {list(asked.only, of_folder.only), list(asked.skip, of_folder.skip)}};
}

// What was passed over in folders, in one line; empty if nothing was.
std::string passed_over(std::vector<std::string> const& others) {
    if (others.empty()) return {};
    constexpr std::size_t most = 3;
    std::vector<std::string> const named(others.begin(), others.size() > most ? others.begin() + most : others.end());
    auto out = fmt::format("bankwright: ignored {} that {}: {}", counted(static_cast<int>(others.size()), "file"),
                           others.size() == 1 ? "is not a bank file" : "are not bank files", fmt::join(named, ", "));
    if (others.size() > most) out += ", ...";
    return terminal_safe(out) + "\n";
}

// One run over all the files: what is found in each, what was passed over, and the status that this adds up to.
class FileCheck {
public:
    explicit FileCheck(Settings const& asked) : asked_(asked) {}

    void look_into(BankFiles const& found) {
        say(found.trouble, found.trouble.empty() ? ExitCode::clean : ExitCode::unusable);
        Progress progress(found.files.size());
        for (std::size_t i = 0; i < found.files.size(); ++i) {
            progress.at(i);
            look_into(found.files[i]);
        }
        if (passed_ > 0 && passed_ == found.files.size())
            say("bankwright: none of what was found is a bank file\n", ExitCode::unusable);
    }

    // Part lists and settings.
    std::vector<std::string> also_read() const { return folders_.files_read(); }

    Verdicts const& verdicts() const { return verdicts_; }

    Outcome outcome(std::string out) {
        outcome_.err += passed_over(others_);
        outcome_.out = std::move(out);
        return std::move(outcome_);
    }

private:
    void say(std::string const& lines, ExitCode status) {
        outcome_.err += lines;
        outcome_.worsen(status);
    }

    void say_trouble(std::string const& file, std::string const& trouble) {
        say("bankwright: " + terminal_safe(file) + ": " + trouble + "\n", ExitCode::unusable);
    }

    void add(Verdict verdict, bool readable) {
        if (!readable) outcome_.worsen(ExitCode::unusable);
        if (count_from(*verdict.fail_on, count(verdict.findings)) > 0) outcome_.worsen(ExitCode::found);
        verdicts_.push_back(std::move(verdict));
    }

    // Once for all the files that a settings file counts for.
    void add(FolderSettings& settings, Level fail_on) {
        if (std::exchange(settings.is_told, true)) return;
        settings.verdict.fail_on = fail_on;
        if (!settings.trouble.empty())
            say_trouble(settings.verdict.file, settings.trouble);
        else if (!settings.verdict.findings.empty())
            add(settings.verdict, settings.readable);
    }

    void look_into(BankFile const& file) {
        auto* const settings = folders_.settings_for(file);
        auto const terms = terms_of(asked_, settings ? settings->settings : Settings());
        CheckedFile checked;
        try {
            checked = read_and_check(file, terms.rules, folders_);
        } catch (std::exception const& fault) { // of the program: the other files need not suffer for it
            return say(terminal_safe("bankwright: " + file.name + ": internal fault: " + fault.what()) + "\n",
                       ExitCode::own_fault);
        }
        if (checked.kind != Resembles::bank) {
            ++passed_;
            if (checked.kind == Resembles::other) others_.push_back(file.name);
            return;
        }
        if (settings) add(*settings, terms.fail_on);
        outcome_.err += checked.remark;
        if (!checked.trouble.empty()) return say_trouble(file.name, checked.trouble);
        checked.fail_on = terms.fail_on;
        add(checked, checked.readable);
    }

    Settings const& asked_;
    Folders folders_;
    Outcome outcome_;
    Verdicts verdicts_;
    std::size_t passed_ = 0;          // in folders, as no bank files
    std::vector<std::string> others_; // of these, neither part lists nor settings
};

Outcome not_over_an_input(std::string const& output) {
    return {{},
            "bankwright: " + terminal_safe(output) + ": is one of the files to check; nothing was written\n",
            ExitCode::unusable};
}

} // namespace

Usage CheckCommand::usage() {
    auto const one_of = [](std::optional<std::vector<std::string>>& chosen) {
        return option::List{[&chosen](std::string const& id) {
            if (!chosen) chosen.emplace();
            chosen->push_back(id);
            return unknown_rule(id);
        }};
    };
    Usage usage{
        .options = {{.names = "file",
                     .kind = option::Texts{files},
                     .help = "Bank files, folders that hold them, or patterns such as \"boats/**/*.toml\"; - is "
                             "standard input",
                     .stands_for = "FILE",
                     .is_required = true},
                    how_to_print(format, {Format::text, Format::json, Format::sarif, Format::junit}),
                    {.names = "--fail-on",
                     .kind = choice(asked.fail_on,
                                    std::vector<std::pair<std::string, Level>>{
                                        {"error", Level::error}, {"warning", Level::warning}, {"note", Level::note}}),
                     .help = "Exit with 1 if there is a finding of this level or worse [error]",
                     .stands_for = "LEVEL"},
                    {.names = "--only",
                     .kind = one_of(asked.only),
                     .help = "Check only these rules or families",
                     .stands_for = "ID,..."},
                    {.names = "--skip",
                     .kind = one_of(asked.skip),
                     .help = "Leave these rules or families out",
                     .stands_for = "ID,..."}},
        .closing = with_statuses("--fail-on, --only and --skip may be set in a bankwright-settings.toml beside the "
                                 "files or above them.\nExample: bankwright check boats --fail-on warning"),
        .problem = [this] { return read_once(files); }};
    add_output(usage.options, output, "Write the findings to this file, whole or not at all");
    usage.options.push_back({.names = "--all",
                             .kind = flag(all),
                             .help = "Show consequences of other findings, and accepted findings, too"});
    return usage;
}

std::string CheckCommand::print(Verdicts const& verdicts, bool color) const {
    switch (format) {
    case Format::text:
        return findings_text(verdicts, {.color = color, .all = all});
    case Format::json:
        return findings_json(verdicts);
    case Format::sarif:
        return findings_sarif(verdicts, all_rules());
    case Format::junit:
        return findings_junit(verdicts, asked.fail_on.value_or(Level::error));
    case Format::markdown: // not offered
    case Format::csv:
    case Format::html:
    case Format::svg:
        break;
    }
    return {};
}

Outcome CheckCommand::run(bool color) const {
    auto const found = find_bank_files(files);
    bool const into_file = !output.name.empty();
    std::vector<std::string> names = files;
    for (auto const& file : found.files)
        names.push_back(file.name);
    if (into_file && !input_that_is(output.name, names).empty()) return not_over_an_input(output.name);

    FileCheck check(asked);
    check.look_into(found);
    if (into_file && !input_that_is(output.name, check.also_read()).empty()) return not_over_an_input(output.name);
    bool const says_something = !check.verdicts().empty() || into_file;
    auto outcome = check.outcome(says_something ? print(check.verdicts(), color && !into_file) : std::string());
    outcome.file = output;
    return outcome;
}
