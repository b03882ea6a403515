// One bank file, read and checked as far as it goes.
#pragma once

#include "bank_files.hpp"
#include "bankwright/rules/inspect.hpp"
#include "folders.hpp"

#include <string>
#include <vector>

struct CheckedFile : bankwright::Inspection {
    std::string trouble{};                // why the file could not be opened or read; empty if it could
    std::string remark{};                 // what was left unchecked, and why; empty if nothing was
    Resembles kind = Resembles::bank;     // found in a folder, and no bank: nothing was checked, and nothing need be
    std::vector<std::string> also_read{}; // part lists; of one file read by itself
};

// What the file itself gets wrong is always found, whichever rules are chosen.
CheckedFile read_and_check(std::string const& file);
CheckedFile read_and_check(BankFile const& file, bankwright::CheckOptions const& rules, Folders& folders);

// No rule is tried on a bank that could be read whole: for an answer that no rule has a part in.
CheckedFile read_alone(std::string const& file);
