// Findings as lines that a test can compare: "3:1-3:13 file/bad-unit [system].voltage".
#pragma once

#include "bankwright/findings/finding.hpp"

#include <string>
#include <vector>

#include <doctest/doctest.h>

namespace bankwright::test {

inline std::string place(Region const& region) {
    auto const number = [](int n) { return std::to_string(n); };
    return number(region.begin.line) + ":" + number(region.begin.column) + "-" + number(region.end.line) + ":" +
           number(region.end.column);
}

inline std::string line_of(Finding const& finding) {
    std::string line = (finding.region ? place(*finding.region) : "nowhere") + " " + finding.rule;
    std::string about = finding.parts.empty() ? "" : finding.parts.front();
    if (!finding.key.empty()) about += "." + finding.key;
    return about.empty() ? line : line + " " + about;
}

inline std::vector<std::string> lines_of(Findings const& findings) {
    std::vector<std::string> lines;
    for (auto const& finding : findings)
        lines.push_back(line_of(finding));
    return lines;
}

} // namespace bankwright::test

template <>
struct doctest::StringMaker<std::vector<std::string>> {
    static String convert(std::vector<std::string> const& lines) {
        std::string text;
        for (auto const& line : lines)
            text += "\n    " + line;
        return text.c_str();
    }
};
