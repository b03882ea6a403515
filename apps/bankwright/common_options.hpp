// Options that several commands know, and how a quantity is read after one.
#pragma once

#include "bankwright/text/escape.hpp"
#include "bankwright/units/parse.hpp"
#include "bankwright/units/quantities.hpp"
#include "option.hpp"
#include "outcome.hpp"

#include <optional>
#include <string>
#include <vector>

// The last lines of a command's help: `text`, and what its exit status says.
std::string with_statuses(std::string const& text);

Option bank_file(std::string& target);
// Where the results go, and that it may replace what is protected there.
void add_output(std::vector<Option>& options, OutputFile& target, std::string help);
Option how_to_print(Format& target, std::vector<Format> const& known);

// Of the files that a command reads, standard input is one at most: empty, or the problem.
std::string read_once(std::vector<std::string> const& files);

// A quantity that `is_allowed`; the complaint about another one ends in `expected`.
template <class Quantity, class Target, class Test>
option::Typed quantity(std::string name, Target& target, Test is_allowed, std::string expected) {
    return {[name = std::move(name), &target, is_allowed, expected = std::move(expected)](std::string const& typed) {
        auto const parsed = bankwright::parse<Quantity>(typed);
        if (!parsed.value) return name + ": " + parsed.problem;
        if (!is_allowed(*parsed.value)) return name + ": `" + bankwright::terminal_safe(typed) + "` " + expected;
        target = *parsed.value;
        return std::string();
    }};
}

// From 0 to 100 %.
template <class Share>
bool is_share(Share const& share) {
    return share.value() >= 0.0 && share.value() <= 1.0;
}

// Above 0.
Option time_option(std::string const& name, std::optional<bankwright::Duration>& target, std::string help);
