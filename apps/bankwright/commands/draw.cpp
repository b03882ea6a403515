#include "commands/draw.hpp"

#include "commands/moment_words.hpp"
#include "output_file.hpp"
#include "reading.hpp"

#include "bankwright/analyses/operating_point.hpp"
#include "bankwright/drawing/svg.hpp"
#include "bankwright/reports/text.hpp"
#include "bankwright/text/escape.hpp"

#include <stdexcept>

using namespace bankwright;

// Standard output, or the file that was asked for, holds a drawing or nothing.
Outcome run(DrawRequest const& request, bool) {
    auto reading = read_and_check(request.file);
    auto const trouble = [&](std::string const& what) {
        return Outcome{{}, "bankwright: " + terminal_safe(request.file) + ": " + what + "\n", ExitCode::unusable};
    };
    if (!reading.trouble.empty()) return trouble(reading.trouble);
    if (!request.output.empty() && !input_that_is(request.output, {request.file}).empty())
        return trouble("is the bank file; the drawing needs another name");
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
        return trouble(too_many.what());
    }
}
