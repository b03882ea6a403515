#include "commands/compare.hpp"

#include "bankwright/page/comparison_page.hpp"
#include "bankwright/reports/compare_json.hpp"
#include "bankwright/reports/compare_text.hpp"
#include "checked_file.hpp"
#include "common_options.hpp"
#include "refusal.hpp"

#include <utility>

using namespace bankwright;

Usage CompareCommand::usage() {
    Usage usage{.options = {{.names = "files",
                             .kind = option::Texts{files},
                             .help = "Two bank files or more; one may be -, standard input",
                             .stands_for = "FILES",
                             .is_required = true},
                            how_to_print(format, {Format::text, Format::json, Format::html})},
                .closing = with_statuses("Example: bankwright compare two-strings.toml three-strings.toml"),
                .problem = [this] {
                    if (files.size() < 2) return std::string("compare: two files or more are compared");
                    return read_once(files);
                }};
    add_output(usage.options, output, "Write it to this file instead of standard output");
    return usage;
}

Outcome CompareCommand::run(bool color) const {
    std::vector<BankFigures> figures;
    std::vector<Bank> banks;
    for (auto const& file : files) {
        auto checked = read_and_check(file);
        if (auto refused = refuse_unless_whole(checked, file, format != Format::json, color)) return *refused;
        if (auto refusal = refuse_to_write_over(checked, file, output.name, "comparison")) return *refusal;
        figures.push_back(figures_of(file, checked.bank, {checked.findings, checked.arrangement, {}}));
        banks.push_back(std::move(checked.bank));
    }
    if (format == Format::json) return {compare_json(figures), {}, ExitCode::clean, output};
    if (format == Format::html) return {page::comparison_to_html(figures, banks), {}, ExitCode::clean, output};
    return {compare_text(figures), {}, ExitCode::clean, output};
}
