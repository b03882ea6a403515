// Where an end of a conductor can come: what lies together, and how far the rest is along the boat's own conductors.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/bank/terminals.hpp"
#include "bankwright/wiring/places.hpp"

#include <algorithm>
#include <cstddef>
#include <limits>
#include <map>
#include <string>
#include <vector>

namespace traces {

using namespace bankwright;

// Meters between any two terminals: none along a part or a conductor shorter than 1.5 m, else the conductor's length;
// by the shortest way (Floyd and Warshall).
class Distances {
public:
    explicit Distances(Bank const& bank) : bank_(bank) {
        for (auto const& terminal : terminals_of(bank))
            number_.emplace(terminal, number_.size());
        meters_.assign(number_.size() * number_.size(), std::numeric_limits<double>::infinity());
        for_each_part(bank, [&](PartKind kind, auto const& part) {
            if (kind == PartKind::jumper || kind == PartKind::cable) return;
            auto const terminals = terminals_of(part);
            for (auto const& one : terminals)
                for (auto const& other : terminals)
                    join(one, other, 0.0);
        });
        for (auto const& run : bank.jumpers)
            join(run.from, run.to, way(length(run, true)));
        for (auto const& run : bank.cables)
            join(run.from, run.to, way(length(run, false)));
        auto const n = number_.size();
        for (std::size_t k = 0; k < n; ++k)
            for (std::size_t i = 0; i < n; ++i)
                for (std::size_t j = 0; j < n; ++j)
                    meters_[i * n + j] = std::min(meters_[i * n + j], meters_[i * n + k] + meters_[k * n + j]);
    }

    // A quarter of its length to spare, as conductors do not run straight; a cable of unknown length comes anywhere.
    bool reaches(Run const& run, bool is_jumper, std::string const& fixed_end, std::string const& terminal) const {
        if (!is_jumper && !length_of(run, bank_.system)) return true;
        double const far = meters_[number_.at(fixed_end) * number_.size() + number_.at(terminal)];
        return far <= 1.25 * (length_of(run, bank_.system) ? length(run, is_jumper) : 0.0);
    }

private:
    double length(Run const& run, bool is_jumper) const {
        auto const known = length_of(run, bank_.system);
        return known ? known->value() : is_jumper ? 0.0 : 1.5;
    }
    static double way(double meters) { return meters < 1.5 ? 0.0 : meters; }
    void join(std::string const& one, std::string const& other, double meters) {
        auto const a = number_.at(one), b = number_.at(other), n = number_.size();
        meters_[a * n + b] = std::min(meters_[a * n + b], meters);
        meters_[b * n + a] = std::min(meters_[b * n + a], meters);
    }

    Bank const& bank_;
    std::map<std::string, std::size_t> number_;
    std::vector<double> meters_;
};

} // namespace traces
