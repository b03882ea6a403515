// Bodies of validate.hpp.
#pragma once

#include "bankwright/solver/validate.hpp"

#include <algorithm>
#include <cmath>
#include <variant>

namespace bankwright::solver {

BANKWRIGHT_INLINE bool is_valid(Law const& law) {
    struct Check {
        bool operator()(ConstantCurrent const& l) const { return std::isfinite(l.amperes); }
        bool operator()(ConstantPower const& l) const { return std::isfinite(l.watts) && l.watts >= 0.0; }
        bool operator()(SquareLaw const& l) const {
            return std::isfinite(l.coefficient) && l.coefficient >= 0.0 && std::isfinite(l.resistance) &&
                   l.resistance >= 0.0 && l.duty >= 0.0 && l.duty <= 1.0;
        }
        bool operator()(LimitedSource const& l) const {
            return std::isfinite(l.volts) && std::isfinite(l.amperes) && l.amperes > 0.0;
        }
    };
    return std::visit(Check{}, law);
}

BANKWRIGHT_INLINE bool is_valid(Circuit const& circuit) {
    auto const node = [&](int n) { return n >= 0 && n < circuit.nodes; };
    return node(circuit.reference) &&
           std::all_of(circuit.branches.begin(), circuit.branches.end(),
                       [&](Branch const& b) {
                           return node(b.from) && node(b.to) && b.resistance > 0.0 && std::isfinite(b.resistance) &&
                                  std::isfinite(1.0 / b.resistance) && std::isfinite(b.emf);
                       }) &&
           std::all_of(circuit.joins.begin(), circuit.joins.end(),
                       [&](Join const& j) { return node(j.from) && node(j.to); }) &&
           std::all_of(circuit.loads.begin(), circuit.loads.end(),
                       [&](Load const& l) { return node(l.plus) && node(l.minus) && is_valid(l.law); });
}

} // namespace bankwright::solver
