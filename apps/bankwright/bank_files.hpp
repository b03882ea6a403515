// Which bank files do the arguments mean? Files, folders with all below them, patterns that the shell left alone.
#pragma once

#include <string>
#include <string_view>
#include <vector>

struct BankFile {
    std::string name;     // as findings name it; "-": standard input
    std::string tree;     // the folder that its part lists and settings may come from; empty: none
    bool is_named = true; // by itself: then it must be a bank file; what a folder or pattern gave may be another
};

struct BankFiles {
    std::vector<BankFile> files; // each once: as the arguments stand, below a folder by name
    std::string trouble;         // lines about arguments that lead to no file; empty if all do
};

BankFiles find_bank_files(std::vector<std::string> const& arguments);

// The file alone. Its tree is the current folder where it lies below that, else its own folder.
BankFile named_file(std::string const& name);

// What is a TOML file that a folder holds? `companion`: a part list, readings or settings, which belong
// there.
enum class Resembles { bank, companion, other };
// A bank file is known by its version or its batteries, however wrong it is otherwise.
Resembles what_resembles(std::string_view text, std::string const& name);
