// Options that several commands know, and how a quantity is read after one.
#pragma once

#include "bankwright/network/option_limits.hpp"
#include "bankwright/text/escape.hpp"
#include "bankwright/units/parse.hpp"
#include "bankwright/units/quantities.hpp"
#include "option.hpp"
#include "outcome.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

// The last lines of a command's help: `text`, and what its exit status says.
std::string with_statuses(std::string const& text);

Option bank_file(std::string& target);
// Where the results go, and that it may replace what is protected there.
void add_output(std::vector<Option>& options, OutputFile& target, std::string help);
Option how_to_print(Format& target, std::vector<Format> const& known);

// Of the files that a command reads, standard input is one at most: empty, or the problem.
std::string read_once(std::vector<std::string> const& files);

// A quantity with which there is no problem, as the library judges it (network/option_limits.hpp).
template <class Quantity, class Target>
option::Typed quantity(std::string name, Target& target, std::string_view (*problem_with)(Quantity)) {
    return {[name = std::move(name), &target, problem_with](std::string const& typed) {
        auto const parsed = bankwright::parse<Quantity>(typed);
        if (!parsed.value) return name + ": " + parsed.problem;
        if (auto const problem = problem_with(*parsed.value); !problem.empty())
            return name + ": `" + bankwright::terminal_safe(typed) + "` " + std::string(problem);
        target = *parsed.value;
        return std::string();
    }};
}

// Above 0.
Option time_option(std::string const& name, std::optional<bankwright::Duration>& target, std::string help);
