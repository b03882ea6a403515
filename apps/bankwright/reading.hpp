// One bank file, read and checked as far as it goes.
#pragma once

#include "bank_files.hpp"
#include "bankwright/bank/bank.hpp"
#include "bankwright/bank/source_map.hpp"
#include "bankwright/reports/verdict.hpp"
#include "bankwright/rules/check.hpp"
#include "folders.hpp"

#include <string>
#include <vector>

struct Reading {
    std::string trouble;              // why the file could not be opened or read; empty if it could
    std::string remark;               // what was left unchecked, and why; empty if nothing was
    Resembles kind = Resembles::bank; // found in a folder, and no bank: nothing was checked, and nothing need be
    bool readable = false;            // it is a bank file, however wrong
    bool as_written = false;          // it is one, and all of it could be understood
    bankwright::Bank bank;            // as far as it could be read
    bankwright::SourceMap map;
    bankwright::Verdict verdict;        // findings of the reader and of every rule, located and in order
    std::vector<std::string> also_read; // part lists; of one file read by itself
};

// What the file itself gets wrong is always found, whichever rules are chosen.
Reading read_and_check(std::string const& file, bankwright::CheckOptions const& rules = {});
Reading read_and_check(BankFile const& file, bankwright::CheckOptions const& rules, Folders& folders);
