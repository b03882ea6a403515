#include "refusal.hpp"

#include "bankwright/reports/findings_json.hpp"
#include "bankwright/reports/findings_text.hpp"
#include "bankwright/text/escape.hpp"
#include "output_file.hpp"

#include <utility>

using namespace bankwright;

Outcome unusable(std::string const& file, std::string const& what) {
    return {{}, "bankwright: " + terminal_safe(file) + ": " + what + "\n", ExitCode::unusable};
}

Outcome refused(Verdict verdict, bool as_text, bool color) {
    Verdicts const verdicts{std::move(verdict)};
    return {as_text ? findings_text(verdicts, {.color = color}) : findings_json(verdicts), {}, ExitCode::unusable};
}

std::optional<Outcome> refuse_unless_whole(CheckedFile& checked, std::string const& file, bool as_text, bool color) {
    if (!checked.trouble.empty()) return unusable(file, checked.trouble);
    if (checked.as_written) return std::nullopt;
    auto outcome = refused(checked, as_text, color);
    outcome.err = checked.remark;
    return outcome;
}

std::optional<Outcome> refuse_to_write_over(CheckedFile const& checked, std::string const& file,
                                            std::string const& output, std::string const& what) {
    if (output.empty()) return std::nullopt;
    if (!input_that_is(output, {file}).empty())
        return unusable(file, "is the bank file; the " + what + " needs another name");
    if (!input_that_is(output, checked.also_read).empty())
        return unusable(output, "is a part list of the bank; the " + what + " needs another name");
    return std::nullopt;
}
