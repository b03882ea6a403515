// One column of a published table, as numbers.
#pragma once

#include <array>
#include <cstddef>

namespace bankwright::tables {

template <class Row, std::size_t Rows, class Value>
constexpr std::array<double, Rows> column(std::array<Row, Rows> const &table, Value Row::*of) {
    std::array<double, Rows> numbers{};
    for (std::size_t i = 0; i < Rows; ++i)
        numbers[i] = table[i].*of;
    return numbers;
}

} // namespace bankwright::tables
