#include "checked_file.hpp"

#include "bankwright/config/read.hpp"
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
    return terminal_safe(fmt::format("bankwright: {}: only shorts and matching were checked, as `{}` could not be read",
                                     file, fmt::join(left_out, "`, `"))) +
           "\n";
}

// Its name and its text, or why there is none.
CheckedFile opened(BankFile const& file) {
    auto input = read_input(file.name, ReadLimits{}.bytes);
    CheckedFile checked;
    checked.file = file.name;
    checked.trouble = std::move(input.trouble);
    if (!checked.trouble.empty()) return checked;
    if (!file.is_named) checked.kind = what_resembles(input.text, file.name);
    checked.text = std::move(input.text);
    return checked;
}

void check(CheckedFile& checked, BankFile const& file, CheckOptions const& rules, Folders& folders) {
    static_cast<Inspection&>(checked) = inspect(checked.text, rules, ReadLimits{}, folders.part_lists_for(file));
    checked.file = file.name;
    if (checked.readable && !checked.left_out.empty()) checked.remark = unchecked(file.name, checked.left_out);
}

} // namespace

CheckedFile read_and_check(std::string const& file) {
    Folders folders;
    auto checked = read_and_check(named_file(file), {}, folders);
    checked.also_read = folders.files_read();
    return checked;
}

CheckedFile read_and_check(BankFile const& file, CheckOptions const& rules, Folders& folders) {
    auto checked = opened(file);
    if (checked.trouble.empty() && checked.kind == Resembles::bank) check(checked, file, rules, folders);
    return checked;
}

CheckedFile read_alone(std::string const& name) {
    Folders folders;
    auto const file = named_file(name);
    auto checked = opened(file);
    if (!checked.trouble.empty()) return checked;
    auto result = read(checked.text, ReadLimits{}, folders.part_lists_for(file));
    checked.as_written = result.readable && count(result.findings).error == 0;
    if (checked.as_written)
        checked.bank = std::move(result.bank);
    else
        check(checked, file, {}, folders); // whoever mends it wants to know all
    return checked;
}
