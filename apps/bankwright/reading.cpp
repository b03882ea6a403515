#include "reading.hpp"

#include "input.hpp"

#include "bankwright/bank/locate.hpp"
#include "bankwright/config/read.hpp"
#include "bankwright/findings/order.hpp"
#include "bankwright/rules/run.hpp"
#include "bankwright/text/escape.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <utility>

using namespace bankwright;

namespace {

// Where parts are missing for want of a key, only that is said which more parts cannot make untrue: a short stays a
// short.
CheckOptions whatever_is_missing() {
    return {.only = {"wiring/short-loop", "wiring/shorted-battery", "matching"}, .skip = {}};
}

std::string unchecked(std::string const& file, std::vector<std::string> const& left_out) {
    return terminal_safe(fmt::format("bankwright: {}: only shorts and matching were checked, for want of `{}`", file,
                                     fmt::join(left_out, "`, `"))) +
           "\n";
}

bool has_errors(Findings const& findings) {
    return std::any_of(findings.begin(), findings.end(), [](Finding const& f) { return f.level == Level::error; });
}

} // namespace

Reading read_and_check(std::string const& file) {
    ReadLimits const limits;
    auto input = read_input(file, limits.bytes);
    Reading reading;
    reading.verdict.file = file;
    reading.trouble = std::move(input.trouble);
    if (!reading.trouble.empty()) return reading;

    auto result = bankwright::read(input.text, limits);
    auto& findings = reading.verdict.findings;
    findings = std::move(result.findings);
    reading.readable = result.readable;
    reading.as_written = result.readable && !has_errors(findings);
    if (result.readable) {
        bool const whole = result.left_out.empty();
        auto checked = bankwright::check(result.bank, whole ? CheckOptions{} : whatever_is_missing());
        if (whole) reading.verdict.arrangement = std::move(checked.arrangement);
        if (!whole) reading.remark = unchecked(file, result.left_out);
        std::move(checked.findings.begin(), checked.findings.end(), std::back_inserter(findings));
    }
    locate(findings, result.map);
    order(findings);
    reading.bank = std::move(result.bank);
    reading.map = std::move(result.map);
    reading.verdict.text = std::move(input.text);
    return reading;
}
