// What differs from bank to bank in a sweep, and what is asked of each?
#pragma once

#include <span>
#include <string>

namespace bankwright {

// One key whose value differs from bank to bank: "A", "resistance". The part "system" is the bank's surroundings.
struct SweptKey {
    std::string part;
    std::string key;
    std::span<double const> values; // one a bank, in the SI unit of the key
};

// What is asked of every bank: the voltage of a terminal against the reference, the voltage across a part, the current
// through it. Signs as everywhere (network/readings.hpp).
struct Measure {
    enum Kind { terminal, voltage, current } kind = terminal;
    std::string name; // of the terminal or part
};

} // namespace bankwright
