#include "commands/check.hpp"

#include "bank_files.hpp"
#include "bankwright/reports/findings_json.hpp"
#include "bankwright/reports/findings_text.hpp"
#include "bankwright/reports/junit.hpp"
#include "bankwright/reports/sarif.hpp"
#include "bankwright/reports/tally.hpp"
#include "bankwright/rules/catalog.hpp"
#include "bankwright/text/escape.hpp"
#include "folders.hpp"
#include "output_file.hpp"
#include "progress.hpp"
#include "reading.hpp"

#include <algorithm>
#include <exception>
#include <utility>

#include <fmt/format.h>

using namespace bankwright;

namespace {

std::string print(Verdicts const& verdicts, CheckRequest const& request, bool colour) {
    switch (request.format) {
    case Format::text:
        return findings_text(verdicts, {.colour = colour, .all = request.all});
    case Format::json:
        return findings_json(verdicts);
    case Format::sarif:
        return findings_sarif(verdicts, all_rules());
    case Format::junit:
        return findings_junit(verdicts, request.asked.fail_on.value_or(Level::error));
    case Format::markdown: // not offered
    case Format::csv:
        break;
    }
    return {};
}

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
    auto out =
        fmt::format("bankwright: passed over {}, no bank file{}: {}", counted(static_cast<int>(others.size()), "file"),
                    others.size() == 1 ? "" : "s", fmt::join(named, ", "));
    if (others.size() > most) out += ", ...";
    return terminal_safe(out) + "\n";
}

Outcome not_over_an_input(std::string const& output) {
    return {{},
            "bankwright: " + terminal_safe(output) + ": is one of the files to check; nothing was written\n",
            ExitCode::unusable};
}

} // namespace

Outcome run(CheckRequest const& request, bool colour) {
    Outcome outcome;
    Verdicts verdicts;
    std::size_t passed = 0;          // in folders, as no bank files
    std::vector<std::string> others; // of these, neither part lists nor settings
    auto const found = find_bank_files(request.files);
    outcome.err = found.trouble;
    if (!found.trouble.empty()) outcome.worsen(ExitCode::unusable);

    if (!request.output.empty()) {
        std::vector<std::string> names = request.files;
        for (auto const& file : found.files)
            names.push_back(file.name);
        if (!input_that_is(request.output, names).empty()) return not_over_an_input(request.output);
        outcome.file = request.output;
        colour = false;
    }

    auto const trouble_with = [&](std::string const& file, std::string const& trouble) {
        outcome.err += "bankwright: " + terminal_safe(file) + ": " + trouble + "\n";
        outcome.worsen(ExitCode::unusable);
    };
    auto const add = [&](Verdict verdict, bool readable) {
        if (!readable) outcome.worsen(ExitCode::unusable);
        if (count_from(*verdict.fail_on, count(verdict.findings)) > 0) outcome.worsen(ExitCode::found);
        verdicts.push_back(std::move(verdict));
    };

    Folders folders;
    Progress progress(found.files.size());
    for (std::size_t i = 0; i < found.files.size(); ++i) {
        auto const& file = found.files[i];
        progress.at(i);
        auto* const settings = folders.settings_for(file);
        auto const terms = terms_of(request.asked, settings ? settings->settings : Settings());
        Reading reading;
        try {
            reading = read_and_check(file, terms.rules, folders);
        } catch (std::exception const& fault) { // of the program: the other files need not suffer for it
            outcome.err += terminal_safe("bankwright: " + file.name + ": internal fault: " + fault.what()) + "\n";
            outcome.worsen(ExitCode::own_fault);
            continue;
        }
        if (reading.kind != Resembles::bank) {
            ++passed;
            if (reading.kind == Resembles::other) others.push_back(file.name);
            continue;
        }
        if (settings && !std::exchange(settings->is_told, true)) {
            settings->verdict.fail_on = terms.fail_on;
            if (!settings->trouble.empty())
                trouble_with(settings->verdict.file, settings->trouble);
            else if (!settings->verdict.findings.empty())
                add(settings->verdict, settings->readable);
        }
        outcome.err += reading.remark;
        if (!reading.trouble.empty()) {
            trouble_with(file.name, reading.trouble);
            continue;
        }
        reading.verdict.fail_on = terms.fail_on;
        add(std::move(reading.verdict), reading.readable);
    }
    if (passed > 0 && passed == found.files.size()) {
        outcome.err += "bankwright: none of what was found is a bank file\n";
        outcome.worsen(ExitCode::unusable);
    }
    if (!request.output.empty() && !input_that_is(request.output, folders.files_read()).empty())
        return not_over_an_input(request.output);
    outcome.err += passed_over(others);
    if (!verdicts.empty() || !request.output.empty()) outcome.out = print(verdicts, request, colour);
    return outcome;
}
