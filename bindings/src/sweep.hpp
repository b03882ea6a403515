// Many banks of one wiring: columns of values in, columns of answers out, through the batch solver. Nothing of Python.
#pragma once

#include "read_bank.hpp"

#include <cstddef>
#include <memory>
#include <string>
#include <vector>

namespace bankwright::python {

// One key whose value differs from bank to bank: "A", "resistance". The part "system" is the bank's surroundings.
struct SweptKey {
    std::string part;
    std::string key;
    double const* values = nullptr; // one a bank, in the SI unit of the key
};

// What is asked of every bank: the voltage of a terminal against the reference, the voltage across a part, the current
// through it. Signs as everywhere (network/readings.hpp).
struct Measure {
    enum Kind { terminal, voltage, current } kind = terminal;
    std::string name; // of the terminal or part
};

// Room for numbers that is not cleared first: every one of them is written.
class Numbers {
public:
    explicit Numbers(std::size_t count) : size_(count), values_(new double[count]) {}
    double* data() { return values_.get(); }
    std::size_t size() const { return size_; }

private:
    std::size_t size_;
    std::unique_ptr<double[]> values_;
};

// measures x banks, by measure. Not a number: that bank has no operating point, or that terminal no path to the
// reference. Throws Refused; std::out_of_range for an unknown part, key or terminal; std::invalid_argument for a key
// that is no quantity, for a value out of the key's range, and for one that would change the wiring (no resistance at
// all); and where the current of an ideal connection is asked for.
Numbers sweep(ReadBank const& read, MomentWords const& moment, std::vector<SweptKey> const& keys, std::size_t banks,
              std::vector<Measure> const& measures, int threads);

} // namespace bankwright::python
