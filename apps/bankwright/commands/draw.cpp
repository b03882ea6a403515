#include "commands/draw.hpp"

#include "bankwright/analyses/operating_point.hpp"
#include "bankwright/drawing/svg.hpp"
#include "bankwright/reports/findings_text.hpp"
#include "commands/moment_words.hpp"
#include "reading.hpp"
#include "refusal.hpp"

#include <stdexcept>

using namespace bankwright;

// Standard output, or the file that was asked for, holds a drawing or nothing.
Outcome run(DrawRequest const& request, bool) {
    auto reading = read_and_check(request.file);
    if (!reading.trouble.empty()) return unusable(request.file, reading.trouble);
    if (auto const refusal = refuse_to_write_over(reading, request.file, request.output, "drawing")) return *refusal;
    if (!reading.as_written) // a drawing of what could be understood of it would be one of another bank
        return {{}, findings_text({std::move(reading.verdict)}) + reading.remark, ExitCode::unusable};
    drawing::DrawOptions options;
    options.point = operating_point(reading.bank, {.moment = request.moment});
    options.moment = in_words(request.moment);
    options.arrangement = reading.verdict.arrangement;
    options.findings = reading.verdict.findings;
    try {
        return {drawing::to_svg(reading.bank, options), {}, ExitCode::clean, request.output};
    } catch (std::length_error const& too_many) {
        return unusable(request.file, too_many.what());
    }
}
