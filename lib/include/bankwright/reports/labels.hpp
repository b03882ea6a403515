// What belongs on the ends of the conductors and on the box: each end says which conductor it is, where it lands, where
// the other end is, and on which side of the bank it lies.
#pragma once

#include "bankwright/bank/bank.hpp"
#include "bankwright/linkage.hpp"
#include "bankwright/units/quantities.hpp"

#include <optional>
#include <string>
#include <vector>

namespace bankwright {

// Said by word, shape and color at once: a square on red, a disk on black, a triangle on white.
enum class Side { positive, negative, between };

struct EndLabel {
    std::string conductor;
    std::string at; // the terminal that this end lands on
    std::string to; // the other end's
    std::string size;
    std::string length;
    Side side = Side::between;
    Voltage above_negative{}; // counted by labels
};

struct BoxLabel {
    std::string name;
    std::string system;      // "36 V DC"
    std::string arrangement; // "3S1P"
    std::vector<std::string> lines;
};

struct Labels {
    std::string file;
    BoxLabel box;
    std::vector<EndLabel> ends; // two a conductor, in the author's order, `from` first
};

char const* word(Side side);  // "plus"
char const* shape(Side side); // "square"
char const* color(Side side); // "red"

// Of a bank whose wiring is right: a wrong one must not be labeled as it is.
Labels labels_of(std::string file, Bank const& bank, std::optional<std::string> const& arrangement);

// One row a label: conductor, at, to, size, length, side, shape, color. RFC 4180.
std::string labels_csv(Labels const& labels);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/reports/labels_inl.hpp"
#endif
