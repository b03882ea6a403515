#include "commands/plan.hpp"

#include "bankwright/config/read_limits.hpp"
#include "bankwright/planning/plan.hpp"
#include "bankwright/planning/plan_file.hpp"
#include "bankwright/reports/findings_text.hpp"
#include "bankwright/reports/plan_json.hpp"
#include "bankwright/reports/plan_text.hpp"
#include "common_options.hpp"
#include "input.hpp"
#include "output_file.hpp"
#include "refusal.hpp"
#include "wish_questions.hpp"

#include <algorithm>
#include <cstddef>
#include <optional>
#include <utility>

using namespace bankwright;

namespace {

// What the user's part list gives; findings in `trouble` where it cannot be used.
struct Stock {
    PartStock parts;
    std::string trouble;
};

Stock stock_from(std::string const& file) {
    if (file.empty()) return {usual_parts(), {}};
    auto input = read_input(file, ReadLimits{}.bytes);
    if (!input.trouble.empty()) return {{}, unusable(file, input.trouble).err};
    Stock stock{part_stock({{file, input.text, {}}}), {}};
    if (count(stock.parts.findings).error == 0) return stock;
    Verdict verdict;
    verdict.file = file;
    verdict.text = std::move(input.text);
    verdict.findings = stock.parts.findings;
    verdict.part_lists = stock.parts.texts;
    stock.trouble = findings_text({verdict});
    return stock;
}

Planned planned_from(ReadWish const& read, PartStock const& stock) {
    Planned planned;
    planned.wish = read.wish;
    if (!read.wish) {
        planned.result.problems = read.problems;
        return planned;
    }
    planned.result = plan(*read.wish, stock);
    if (!planned.result.banks.empty()) planned.text = plan_file(*read.wish, planned.result.banks.front());
    return planned;
}

// Question by question, and again where no bank can be planned so.
Outcome planned_by_asking(OutputFile output) {
    Outcome const quit{{}, "bankwright: nothing was planned\n", ExitCode::clean};
    auto const stock = usual_parts();
    std::optional<WishWords> answers = WishWords();
    std::optional<WishProblem> problem;
    Planned planned;
    while (planned.text.empty()) {
        answers = ask_for_wish(*answers, problem);
        if (!answers) return quit;
        planned = planned_from(read_wish(*answers), stock);
        if (planned.text.empty()) problem = planned.result.problems.front();
    }
    auto const which = ask_which(planned.result.banks.size(), banks_side_by_side(planned.result));
    if (!which) return quit;
    auto& banks = planned.result.banks;
    std::rotate(banks.begin(), banks.begin() + static_cast<std::ptrdiff_t>(*which),
                banks.begin() + static_cast<std::ptrdiff_t>(*which) + 1);
    planned.text = plan_file(*planned.wish, banks.front());
    if (output.name.empty()) {
        auto const name = ask_for_file();
        if (!name) return quit;
        output.name = *name;
    }
    auto const next = "\nthe bank stands in " + terminal_safe(output.name) + "; next: bankwright hookup " +
                      terminal_safe(output.name) + "\n";
    return {"\n" + plan_text(planned) + next, {}, ExitCode::clean, output, planned.text};
}

} // namespace

Usage PlanCommand::usage() {
    auto const wish = [this](WishPart part, std::string help, std::string stands_for) {
        return Option{.names = "--" + std::string(bankwright::name(part)),
                      .kind = option::Text{words.of(part)},
                      .help = std::move(help),
                      .stands_for = std::move(stands_for)};
    };
    Usage usage{
        .options =
            {wish(WishPart::system, "Nominal voltage, such as \"36 V\"", "VOLTAGE"),
             wish(WishPart::motor,
                  "What the motor draws at full throttle, or its thrust: \"45 A\", \"1600 W\", \"80 lb\"", "CURRENT"),
             wish(WishPart::run, "From the battery box to the receptacle, one way, such as \"20 ft\"", "LENGTH"),
             wish(WishPart::runtime, "How long it must run, such as \"4 h\"", "TIME"),
             wish(WishPart::throttle, "At which throttle it must run that long, such as \"60 %\"; else full", "SHARE"),
             wish(WishPart::battery,
                  "What is on the batteries' label, such as \"12 V AGM 100 Ah\"; else any of the "
                  "part list",
                  "LABEL"),
             wish(WishPart::chemistry, "flooded, agm, gel or lithium; else any", "WORD"),
             wish(WishPart::charger, "What a charger for the whole bank gives, such as \"10 A\"; else none", "CURRENT"),
             wish(WishPart::drop, "Voltage drop allowed, out and back, such as \"5 %\"; else 3 %", "SHARE"),
             wish(WishPart::stock, "Sizes of conductors to choose from, such as \"10 AWG, 6 AWG, 2 AWG\"", "SIZES"),
             {.names = "--parts",
              .kind = option::FileName{parts},
              .help = "A part list to choose from, in place of the usual parts",
              .stands_for = "FILE"},
             how_to_print(format, {Format::text, Format::json})},
        .closing = with_statuses(
            "The bank file goes to standard output, or into the file named by --output; what there is "
            "to say about it to the other of the two streams.\n"
            "Example: bankwright plan --system \"36 V\" --motor \"45 A\" --run \"20 ft\" --runtime \"4 h\" "
            "-o boat.toml")};
    add_output(usage.options, output, "Write the bank file to this file instead of standard output");
    return usage;
}

Outcome PlanCommand::run(bool) const {
    bool const nothing_typed = words == WishWords() && parts.empty();
    if (nothing_typed && can_ask()) return planned_by_asking(output);
    auto const stock = stock_from(parts);
    if (!stock.trouble.empty()) return {{}, stock.trouble, ExitCode::unusable};
    if (!parts.empty() && !input_that_is(output.name, {parts}).empty())
        return unusable(output.name, "is the part list that is read; nothing was written");
    auto const read = read_wish(words);
    auto const planned = planned_from(read, stock.parts);
    if (format == Format::json) {
        auto const status = !read.wish ? ExitCode::unusable : planned.text.empty() ? ExitCode::found : ExitCode::clean;
        return {plan_json(planned), {}, status, planned.text.empty() ? OutputFile() : output, planned.text};
    }
    if (!read.wish) {
        std::string text;
        for (auto const& problem : planned.result.problems)
            text += "bankwright: --" + std::string(bankwright::name(problem.part)) + ": " + problem.message + "\n";
        return {{}, text + "bankwright plan --help shows how to use it\n", ExitCode::unusable};
    }
    if (planned.text.empty())
        return {{}, "bankwright: no bank can be planned from this:\n" + plan_problems(planned), ExitCode::found};
    if (output.name.empty()) return {planned.text, plan_text(planned), ExitCode::clean};
    return {plan_text(planned), {}, ExitCode::clean, output, planned.text};
}
