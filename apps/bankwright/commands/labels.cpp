#include "commands/labels.hpp"

#include "bankwright/findings/rule_id.hpp"
#include "bankwright/reports/labels.hpp"
#include "bankwright/reports/labels_json.hpp"
#include "bankwright/text/escape.hpp"
#include "bankwright/units/parse.hpp"
#include "checked_file.hpp"
#include "common_options.hpp"
#include "refusal.hpp"

#include <algorithm>
#include <string_view>
#include <utility>

using namespace bankwright;

namespace {

// "210 x 297 mm" into two lengths; the problem, or nothing.
std::string read_sides(std::string const& name, std::string const& typed, Length& width, Length& height) {
    auto const refuse = name + ": `" + terminal_safe(typed) + "`, expected a width and a height such as `210 x 297 mm`";
    auto const cross = typed.find('x');
    if (cross == std::string::npos) return refuse;
    auto const second = parse<Length>(typed.substr(cross + 1));
    auto first = parse<Length>(typed.substr(0, cross));
    if (!first.value)
        first = parse<Length>(typed.substr(0, cross) + typed.substr(typed.find_last_of("0123456789.") + 1));
    if (!first.value || !second.value) return refuse;
    width = *first.value;
    height = *second.value;
    return {};
}

// A wrong wiring must not get labels that say it is right.
bool is_wrong_wiring(Finding const& finding) {
    return finding.level == Level::error && !finding.accepted && family(finding.rule) == "wiring";
}

std::string ending_of(std::string const& name) {
    auto const dot = name.find_last_of('.');
    return dot == std::string::npos ? std::string() : name.substr(dot + 1);
}

} // namespace

Usage LabelsCommand::usage() {
    auto const sides = [](std::string option, Length& width, Length& height) {
        return option::Typed{
            [=, &width, &height](std::string const& typed) { return read_sides(option, typed, width, height); }};
    };
    std::vector<std::pair<std::string, std::string>> const formats{
        {"html", "html"}, {"svg", "svg"}, {"csv", "csv"}, {"json", "json"}};
    Usage usage{.options = {bank_file(file),
                            {.names = "--format",
                             .kind = choice(asked, formats),
                             .help = "How to print them; else as the name of the output ends, else html",
                             .stands_for = "FORMAT"},
                            {.names = "--sheet",
                             .kind = sides("--sheet", sheet.width, sheet.height),
                             .help = "Size of a sheet, such as \"216 x 279 mm\"; else 210 x 297 mm",
                             .stands_for = "SIZE"},
                            {.names = "--label",
                             .kind = sides("--label", sheet.flag_width, sheet.flag_height),
                             .help = "Size of a flag before it is folded; else 90 x 14 mm",
                             .stands_for = "SIZE"}},
                .closing = with_statuses("Example: bankwright labels boat.toml -o labels.html")};
    add_output(usage.options, output, "Write them to this file instead of standard output");
    return usage;
}

Outcome LabelsCommand::run(bool color) const {
    if (auto const problem = page::sheet_problem(sheet); !problem.empty())
        return {{}, "bankwright: " + problem + "\nbankwright --help shows how to use it\n", ExitCode::unusable};
    auto const ending = ending_of(output.name);
    bool const is_known = ending == "svg" || ending == "csv" || ending == "json";
    auto const format = !asked.empty() ? asked : is_known ? ending : std::string("html");
    auto checked = read_and_check(file);
    if (auto refused = refuse_unless_whole(checked, file, format != "json", color)) return *refused;
    if (auto refusal = refuse_to_write_over(checked, file, output.name, "labels")) return *refusal;
    if (std::any_of(checked.findings.begin(), checked.findings.end(), is_wrong_wiring)) {
        std::erase_if(checked.findings, [](Finding const& finding) { return !is_wrong_wiring(finding); });
        auto outcome = refused(checked, format != "json", color);
        outcome.status = ExitCode::found;
        return outcome;
    }
    auto const labels = labels_of(file, checked.bank, checked.arrangement);
    auto text = format == "csv"    ? labels_csv(labels)
                : format == "svg"  ? page::labels_svg(labels, sheet)
                : format == "json" ? labels_json(labels)
                                   : page::labels_html(labels, sheet);
    return {std::move(text), {}, ExitCode::clean, output};
}
