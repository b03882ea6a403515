// The rows of a comparison, as words that every renderer lays out in its own way: what differs first.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/planning/comparison.hpp"

#include <string>
#include <vector>

namespace bankwright {

struct ComparedRow {
    std::string what;
    std::vector<std::string> values; // by bank; empty where it has none
    bool differs = false;            // as it is printed
};

// At least two banks.
std::vector<ComparedRow> compared_rows(std::vector<BankFigures> const& banks);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/compare_words_inl.hpp"
#endif
