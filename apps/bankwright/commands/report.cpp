#include "commands/report.hpp"

#include "bankwright/page/to_html.hpp"
#include "bankwright/reports/findings_text.hpp"
#include "bankwright/rules/catalog.hpp"
#include "common_options.hpp"
#include "meter_options.hpp"
#include "moment_options.hpp"
#include "reading.hpp"
#include "refusal.hpp"

using namespace bankwright;

Usage ReportCommand::usage() {
    Usage usage{.options = {bank_file(file)},
                .closing = with_statuses("Example: bankwright report boat.toml -o boat.html")};
    add_output(usage.options, output, "Write it into this file instead of standard output");
    add_moment(usage.options, moment);
    add_meter(usage.options, hookup);
    return usage;
}

// Standard output, or the file that was asked for, holds a page or nothing.
Outcome ReportCommand::run(bool) const {
    auto reading = read_and_check(file);
    if (!reading.trouble.empty()) return unusable(file, reading.trouble);
    if (auto const refusal = refuse_to_write_over(reading, file, output.name, "report")) return *refusal;
    if (!reading.as_written) // a report on what could be understood of it would be one on another bank
        return {{}, findings_text({std::move(reading.verdict)}) + reading.remark, ExitCode::unusable};
    auto const report = page::report_on(std::move(reading.bank), std::move(reading.verdict), all_rules(),
                                        {moment, in_words(moment), hookup});
    return {page::to_html(report), {}, ExitCode::clean, output};
}
