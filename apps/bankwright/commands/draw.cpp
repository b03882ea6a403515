#include "commands/draw.hpp"

#include "bankwright/analyses/operating_point.hpp"
#include "bankwright/drawing/svg.hpp"
#include "bankwright/reports/findings_text.hpp"
#include "bankwright/reports/moment_words.hpp"
#include "checked_file.hpp"
#include "common_options.hpp"
#include "moment_options.hpp"
#include "refusal.hpp"

#include <stdexcept>

using namespace bankwright;

Usage DrawCommand::usage() {
    Usage usage{.options = {bank_file(file)},
                .closing = with_statuses("Example: bankwright draw boat.toml -o boat.svg")};
    add_output(usage.options, output, "Write it to this file instead of standard output");
    add_moment(usage.options, moment);
    return usage;
}

// Standard output, or the file that was asked for, holds a drawing or nothing.
Outcome DrawCommand::run(bool) const {
    auto checked = read_and_check(file);
    if (!checked.trouble.empty()) return unusable(file, checked.trouble);
    if (auto const refusal = refuse_to_write_over(checked, file, output.name, "drawing")) return *refusal;
    if (!checked.as_written) // a drawing of what could be understood of it would be one of another bank
        return {{}, findings_text({checked}) + checked.remark, ExitCode::unusable};
    drawing::DrawOptions options;
    options.point = operating_point(checked.bank, {.moment = moment});
    options.moment = in_words(moment);
    options.arrangement = checked.arrangement;
    options.findings = checked.findings;
    try {
        return {drawing::to_svg(checked.bank, options), {}, ExitCode::clean, output};
    } catch (std::length_error const& too_many) {
        return unusable(file, too_many.what());
    }
}
