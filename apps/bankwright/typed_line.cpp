#include "typed_line.hpp"

#include <iostream>

std::optional<std::string> typed_line() {
    std::string text;
    if (!std::getline(std::cin, text)) return std::nullopt;
    auto const first = text.find_first_not_of(" \t\r");
    if (first == std::string::npos) return std::string();
    return text.substr(first, text.find_last_not_of(" \t\r") - first + 1);
}
