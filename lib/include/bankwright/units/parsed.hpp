// What came of reading a text: a value, or what is wrong with it.
#pragma once

#include <optional>
#include <string>

namespace bankwright {

// Either a value or a problem in words: what was found, then what was expected.
template <class Q>
struct Parsed {
    std::optional<Q> value;
    std::string problem;        // empty if all is well
    bool unit_is_wrong = false; // missing, unknown, or of another quantity; otherwise the number is at fault
};

} // namespace bankwright
