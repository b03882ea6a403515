// What the library answers where the current of a bank of batteries in parallel is shared out.
#pragma once

#include "standards/cases.hpp"

#include <string>
#include <vector>

namespace standards {

// How batteries alike in a row are joined: each to the next by a positive and a negative link, as shares of a battery's
// own resistance. "one end": both leads land on the last battery; "diagonal": the positive on the last, the negative on
// the first.
struct Row {
    int batteries = 2;
    double positive_link = 0.0;
    double negative_link = 0.0;
    std::string main_leads;
};

// Shares of the load's current, battery 1 first; their sum is 1.
std::vector<double> shares_of_row(Row const&);

// The same where each battery has a lead of its own to each of two common posts: one positive lead and an equal
// negative one for every battery, as shares of a battery's resistance.
std::vector<double> shares_of_star(std::vector<double> const& leads);

double sharing_answer(Case const&);

} // namespace standards
