// What the solver sees: nodes, branches, joins and loads as plain SI numbers. Nothing of batteries.
#pragma once

#include <variant>
#include <vector>

namespace bankwright::solver {

// A resistance with a source in series. Its current flows from `from` to `to`:
//     current = (V[from] - V[to] + emf) / resistance
// A battery is {from = its negative post, to = its positive post}: its current is positive when it discharges.
struct Branch {
    int from = 0;
    int to = 0;
    double resistance = 0.0; // [ohm], > 0
    double emf = 0.0;        // [V]
};

// An ideal connection: its two nodes are one. Its current is positive from `from` to `to`.
struct Join {
    int from = 0;
    int to = 0;
};

struct ConstantCurrent {
    double amperes = 0.0; // [A] from plus to minus
};
struct ConstantPower {
    double watts = 0.0; // [W], >= 0
};
// A DC machine on a square-law torque (a propeller) behind a chopper of duty d. Machine: E + c E^2 R = d V,
// machine current c E^2, load current d c E^2; zero for V <= 0.
struct SquareLaw {
    double coefficient = 0.0; // c [A/V2]
    double resistance = 0.0;  // R [ohm], >= 0
    double duty = 1.0;        // 0..1
};
// A charger: holds `volts` at its terminals as long as that takes less than `amperes`, delivers `amperes` below it, and
// never takes current. Its load current (plus to minus, outside it) is therefore <= 0.
struct LimitedSource {
    double volts = 0.0;   // [V]
    double amperes = 0.0; // [A], > 0
};
using Law = std::variant<ConstantCurrent, ConstantPower, SquareLaw, LimitedSource>;

// Its current flows from `plus` through the load to `minus`.
struct Load {
    int plus = 0;
    int minus = 0;
    Law law{};
};

struct Circuit {
    int nodes = 0;
    std::vector<Branch> branches{};
    std::vector<Join> joins{};
    std::vector<Load> loads{};
    int reference = 0; // the node that is 0 V
};

} // namespace bankwright::solver
