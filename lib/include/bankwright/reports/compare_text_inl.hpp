#pragma once

#include "bankwright/reports/compare_text.hpp"
#include "bankwright/reports/compare_words.hpp"
#include "bankwright/reports/table.hpp"
#include "bankwright/text/escape.hpp"

#include <string>
#include <vector>

namespace bankwright {

BANKWRIGHT_INLINE std::string compare_text(std::vector<BankFigures> const& banks) {
    auto const all = compared_rows(banks);
    std::vector<Align> const aligned(banks.size() + 1, Align::left);
    std::string out;
    for (bool const differs : {true, false}) {
        Row head{""};
        for (auto const& bank : banks)
            head.push_back(terminal_safe(bank.name));
        std::vector<Row> rows{head};
        for (auto const& row : all) {
            if (row.differs != differs) continue;
            rows.push_back({row.what});
            rows.back().insert(rows.back().end(), row.values.begin(), row.values.end());
        }
        if (!differs && rows.size() == 1) continue;
        out += differs ? "what differs:\n\n" : "\nwhat is the same:\n\n";
        out += rows.size() == 1 ? "nothing that is looked at\n" : table(rows, aligned);
    }
    return out;
}

} // namespace bankwright
