#include "commands/report.hpp"

#include "bankwright/page/to_html.hpp"
#include "bankwright/reports/findings_text.hpp"
#include "bankwright/rules/catalog.hpp"
#include "commands/moment_words.hpp"
#include "reading.hpp"
#include "refusal.hpp"

using namespace bankwright;

// Standard output, or the file that was asked for, holds a page or nothing.
Outcome run(ReportRequest const& request, bool) {
    auto reading = read_and_check(request.file);
    if (!reading.trouble.empty()) return unusable(request.file, reading.trouble);
    if (auto const refusal = refuse_to_write_over(reading, request.file, request.output, "report")) return *refusal;
    if (!reading.as_written) // a report on what could be understood of it would be one on another bank
        return {{}, findings_text({std::move(reading.verdict)}) + reading.remark, ExitCode::unusable};
    auto const report = page::report_on(std::move(reading.bank), std::move(reading.verdict), all_rules(),
                                        {request.moment, in_words(request.moment), request.hookup});
    return {page::to_html(report), {}, ExitCode::clean, request.output};
}
