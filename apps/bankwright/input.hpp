// Where a bank file's text comes from: a file, or standard input for `-`.
#pragma once

#include <cstddef>
#include <string>

struct Input {
    std::string text;
    std::string trouble; // why there is no text; empty if there is
};

// Reads at most `limit` bytes and one more, so that the reader sees that it is too much and an endless file ends.
Input read_input(std::string const& name, std::size_t limit);
