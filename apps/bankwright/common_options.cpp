#include "common_options.hpp"

#include <algorithm>
#include <utility>

using namespace bankwright;

std::string with_statuses(std::string const& text) {
    return text + "\n\nExit status: 0 nothing at or above --fail-on, 1 something was, 2 the input could not be read, "
                  "the results not written, or wrong usage, 3 a fault of the program itself.";
}

Option bank_file(std::string& target) {
    return {.names = "file",
            .kind = option::Text{target},
            .help = "A bank file; - is standard input",
            .stands_for = "FILE",
            .is_required = true};
}

void add_output(std::vector<Option>& options, OutputFile& target, std::string help) {
    options.push_back(
        {.names = "-o,--output", .kind = option::FileName{target.name}, .help = std::move(help), .stands_for = "FILE"});
    options.push_back({.names = "--force",
                       .kind = flag(target.is_forced),
                       .help = "Let --output replace a read-only file, or what a link points to"});
}

Option how_to_print(Format& target, std::vector<Format> const& known) {
    std::vector<std::pair<std::string, Format>> meanings;
    for (auto const format : known)
        meanings.emplace_back(name(format), format);
    auto const usual = meanings.front().first;
    return {.names = "--format",
            .kind = choice(target, std::move(meanings), usual),
            .help = "How to print it",
            .stands_for = "FORMAT"};
}

std::string read_once(std::vector<std::string> const& files) {
    bool const is_once = std::count(files.begin(), files.end(), "-") <= 1;
    return is_once ? std::string() : "standard input (-) can be read only once";
}

Option time_option(std::string const& name, std::optional<Duration>& target, std::string help) {
    return {.names = name,
            .kind = quantity<Duration>(name, target, time_problem),
            .help = std::move(help),
            .stands_for = "TIME"};
}
