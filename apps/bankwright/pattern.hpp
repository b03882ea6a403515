// Does a path match a pattern such as "boats/**/bow-*.toml"? As a shell has it, and `**` stands for any folders or
// none.
#pragma once

#include <string>
#include <string_view>
#include <vector>

// Holds it a sign that patterns are made of?
bool is_pattern(std::string_view argument);

class Pattern {
public:
    explicit Pattern(std::string_view text);

    // The folder above the first part with such a sign; "." where that is the first of all.
    std::string const& folder() const { return folder_; }
    bool matches(std::string_view path) const;

private:
    std::vector<std::string> parts_;
    std::string folder_;
};
