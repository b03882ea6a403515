#include "reading.hpp"

#include "input.hpp"

#include "bankwright/rules/inspect.hpp"
#include "bankwright/text/escape.hpp"

#include <fmt/format.h>

#include <utility>

using namespace bankwright;

namespace {

std::string unchecked(std::string const& file, std::vector<std::string> const& left_out) {
    return terminal_safe(fmt::format("bankwright: {}: only shorts and matching were checked, for want of `{}`", file,
                                     fmt::join(left_out, "`, `"))) +
           "\n";
}

} // namespace

Reading read_and_check(std::string const& file, CheckOptions const& rules) {
    ReadLimits const limits;
    auto input = read_input(file, limits.bytes);
    Reading reading;
    reading.verdict.file = file;
    reading.trouble = std::move(input.trouble);
    if (!reading.trouble.empty()) return reading;

    auto seen = inspect(input.text, rules, limits);
    if (seen.readable && !seen.left_out.empty()) reading.remark = unchecked(file, seen.left_out);
    reading.readable = seen.readable;
    reading.as_written = seen.as_written;
    reading.bank = std::move(seen.bank);
    reading.map = std::move(seen.map);
    reading.verdict.text = std::move(input.text);
    reading.verdict.arrangement = std::move(seen.arrangement);
    reading.verdict.findings = std::move(seen.findings);
    return reading;
}
