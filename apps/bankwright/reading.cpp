#include "reading.hpp"

#include "bankwright/rules/inspect.hpp"
#include "bankwright/text/escape.hpp"
#include "input.hpp"

#include <utility>

#include <fmt/format.h>

using namespace bankwright;

namespace {

// Where a name is refused for its length, it is not told in full.
std::string shortened(std::string name) {
    constexpr std::size_t most = 60;
    if (name.size() <= most) return name;
    auto end = most;
    while (end > 0 && (static_cast<unsigned char>(name[end]) & 0xC0u) == 0x80u) // within a character
        --end;
    return name.substr(0, end) + "...";
}

std::string unchecked(std::string const& file, std::vector<std::string> left_out) {
    for (auto& name : left_out)
        name = shortened(std::move(name));
    return terminal_safe(fmt::format("bankwright: {}: only shorts and matching were checked, for want of `{}`", file,
                                     fmt::join(left_out, "`, `"))) +
           "\n";
}

} // namespace

Reading read_and_check(std::string const& file, CheckOptions const& rules) {
    Folders folders;
    auto reading = read_and_check(named_file(file), rules, folders);
    reading.also_read = folders.files_read();
    return reading;
}

Reading read_and_check(BankFile const& file, CheckOptions const& rules, Folders& folders) {
    ReadLimits const limits;
    auto input = read_input(file.name, limits.bytes);
    Reading reading;
    reading.verdict.file = file.name;
    reading.trouble = std::move(input.trouble);
    if (!reading.trouble.empty()) return reading;
    if (!file.is_named) reading.kind = what_resembles(input.text, file.name);
    if (reading.kind != Resembles::bank) return reading;

    auto seen = inspect(input.text, rules, limits, folders.part_lists_for(file));
    if (seen.readable && !seen.left_out.empty()) reading.remark = unchecked(file.name, seen.left_out);
    reading.readable = seen.readable;
    reading.as_written = seen.as_written;
    reading.bank = std::move(seen.bank);
    reading.map = std::move(seen.map);
    reading.verdict.text = std::move(input.text);
    reading.verdict.arrangement = std::move(seen.arrangement);
    reading.verdict.findings = std::move(seen.findings);
    reading.verdict.part_lists = std::move(seen.part_lists);
    return reading;
}
