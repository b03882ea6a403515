#include "commands/report.hpp"

#include "bankwright/config/write_log.hpp"
#include "bankwright/page/to_html.hpp"
#include "bankwright/reports/findings_text.hpp"
#include "bankwright/reports/moment_words.hpp"
#include "bankwright/rules/catalog.hpp"
#include "checked_file.hpp"
#include "common_options.hpp"
#include "kept_log.hpp"
#include "meter_options.hpp"
#include "moment_options.hpp"
#include "refusal.hpp"

#include <utility>

using namespace bankwright;

Usage ReportCommand::usage() {
    Usage usage{.options = {bank_file(file)},
                .closing = with_statuses("Example: bankwright report boat.toml -o boat.html")};
    add_output(usage.options, output, "Write it to this file instead of standard output");
    usage.options.push_back({.names = "--only",
                             .kind = option::List{[this](std::string const& typed) { return read_chapter(typed); }},
                             .help = "These chapters alone, such as hookup,drawing; the verdict is always there",
                             .stands_for = "CHAPTERS"});
    usage.options.push_back({.names = "--log",
                             .kind = option::FileName{log},
                             .help = "The log of a hook-up: what was read beside what was expected",
                             .stands_for = "LOG"});
    add_moment(usage.options, moment);
    add_meter(usage.options, hookup);
    return usage;
}

std::string ReportCommand::read_chapter(std::string const& typed) {
    std::string known;
    for (auto const chapter : page::all_chapters()) {
        if (typed == page::name(chapter)) {
            only.push_back(chapter);
            return {};
        }
        known += (known.empty() ? "" : ", ") + std::string(page::name(chapter));
    }
    return "--only: `" + terminal_safe(typed) + "` is no chapter of a report; they are " + known;
}

// Standard output, or the file that was asked for, holds a page or nothing.
Outcome ReportCommand::run(bool) const {
    auto checked = read_and_check(file);
    if (!checked.trouble.empty()) return unusable(file, checked.trouble);
    if (auto const refusal = refuse_to_write_over(checked, file, output.name, "report")) return *refusal;
    if (!checked.as_written) // a report on what could be understood of it would be one on another bank
        return {{}, findings_text({checked}) + checked.remark, ExitCode::unusable};
    page::ReportOptions options{moment, in_words(moment), hookup, only, {}};
    if (!log.empty()) {
        KeptLog kept;
        if (auto refused = read_kept_log(kept, log, checked.bank, false, true, false)) {
            refused->err += std::exchange(refused->out, {});
            return *refused;
        }
        auto changed = changed_since(kept.log.marks, checked.bank);
        options.log = page::ReadLog{log, std::move(kept.log), std::move(changed)};
    }
    auto const report = page::report_on(std::move(checked.bank), checked, all_rules(), std::move(options));
    return {page::to_html(report), {}, ExitCode::clean, output};
}
