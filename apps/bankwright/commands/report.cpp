#include "commands/report.hpp"

#include "bankwright/page/to_html.hpp"
#include "bankwright/reports/findings_text.hpp"
#include "bankwright/reports/moment_words.hpp"
#include "bankwright/rules/catalog.hpp"
#include "checked_file.hpp"
#include "common_options.hpp"
#include "meter_options.hpp"
#include "moment_options.hpp"
#include "refusal.hpp"

using namespace bankwright;

Usage ReportCommand::usage() {
    Usage usage{.options = {bank_file(file)},
                .closing = with_statuses("Example: bankwright report boat.toml -o boat.html")};
    add_output(usage.options, output, "Write it to this file instead of standard output");
    add_moment(usage.options, moment);
    add_meter(usage.options, hookup);
    return usage;
}

// Standard output, or the file that was asked for, holds a page or nothing.
Outcome ReportCommand::run(bool) const {
    auto checked = read_and_check(file);
    if (!checked.trouble.empty()) return unusable(file, checked.trouble);
    if (auto const refusal = refuse_to_write_over(checked, file, output.name, "report")) return *refusal;
    if (!checked.as_written) // a report on what could be understood of it would be one on another bank
        return {{}, findings_text({checked}) + checked.remark, ExitCode::unusable};
    auto const report =
        page::report_on(std::move(checked.bank), checked, all_rules(), {moment, in_words(moment), hookup});
    return {page::to_html(report), {}, ExitCode::clean, output};
}
