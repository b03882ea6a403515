// One bank file, read and judged as far as it goes.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/reports/verdict.hpp"

#include <optional>
#include <string>

struct Judged {
    std::string trouble;   // why the file could not be opened or read; empty if it could
    bool readable = false; // it is a bank file, however wrong
    bankwright::Bank bank;
    bankwright::Verdict verdict; // findings of the reader and of every rule, located and in order
};

Judged judge(std::string const& file);
