// Which miswirings are tried? The bank of 3s4p with one end of one of its links on any other post.
#pragma once

#include "bankwright/solver/circuit.hpp"
#include "support/bank_networks.hpp"

#include <vector>

namespace bench {

struct Hypotheses {
    bankwright::solver::Circuit base = bank_networks::bank(3, 4);
    struct Moved {
        int branch;
        bankwright::solver::Branch now;
    };
    std::vector<Moved> moved;
    std::vector<bankwright::solver::Circuit> circuits; // each as a whole

    Hypotheses() {
        int const posts = 24;
        for (int b = 0; b < static_cast<int>(base.branches.size()); ++b) {
            auto const& link = base.branches[static_cast<std::size_t>(b)];
            if (link.emf != 0.0 || link.from >= posts || link.to >= posts) continue; // a battery, a lead
            for (int post = 0; post < posts; ++post)
                for (bool const is_from : {true, false}) {
                    Moved m{b, link};
                    if (post == link.from || post == link.to) continue;
                    (is_from ? m.now.from : m.now.to) = post;
                    moved.push_back(m);
                    circuits.push_back(base);
                    circuits.back().branches[static_cast<std::size_t>(b)] = m.now;
                }
        }
    }
};

} // namespace bench
