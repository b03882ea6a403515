// The published values under tests/standards/<source>/cases.toml, as C++ sees them. README.md says what a file holds.
#pragma once

#include <map>
#include <string>
#include <vector>

namespace standards {

// How near the library must come. `below` and `above` are shares of the value: how far it may lie under and over it.
struct Tolerance {
    double within = 0.0;
    double below = 0.0;
    double above = 0.0;
    double away = 0.0; // not nearer than this: for an answer known to be wrong
};

struct Case {
    std::string kind;   // who answers: answers.cpp
    std::string source; // folder
    std::string clause;
    std::string quantity;
    std::string unit;
    std::string mark;
    std::string why;
    Tolerance tolerance;
    std::map<std::string, double> numbers; // true is 1
    std::map<std::string, std::string> words;
    double value = 0.0;

    double number(std::string const& name) const; // throws std::out_of_range
    double number(std::string const& name, double otherwise) const;
    std::string const& word(std::string const& name) const; // throws std::out_of_range
    std::string describe() const;
};

// Every case below the folder; throws std::runtime_error where a file does not add up.
std::vector<Case> read_cases(std::string const& folder);

// How far an answer is from the printed value: over the value, and over what is allowed (<= 1 passes).
struct Deviation {
    double of_value = 0.0;
    double of_tolerance = 0.0;
};
Deviation deviation(Case const&, double answer);

// One line a source: values checked, worst deviation from the value, most of a tolerance used, and the reason for the
// tolerance of the case that deviates most. The lines that table.py gathers.
std::string table(std::vector<Case> const&, std::vector<Deviation> const&);

} // namespace standards
