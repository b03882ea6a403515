#include "pattern.hpp"

#include <algorithm>
#include <cstddef>
#include <utility>

#include <fnmatch.h>

namespace {

std::vector<std::string> parts_of(std::string_view path) {
    std::vector<std::string> parts;
    for (std::size_t at = 0; at <= path.size();) {
        auto const end = std::min(path.find('/', at), path.size());
        auto const part = path.substr(at, end - at);
        if ((!part.empty() && part != ".") || (part.empty() && at == 0 && end < path.size())) parts.emplace_back(part);
        at = end + 1;
    }
    return parts;
}

} // namespace

bool is_pattern(std::string_view argument) { return argument.find_first_of("*?[") != std::string_view::npos; }

Pattern::Pattern(std::string_view text) : parts_(parts_of(text)) {
    for (auto const& part : parts_) {
        if (is_pattern(part)) break;
        folder_ += part + "/";
    }
    if (folder_.empty()) folder_ = ".";
}

bool Pattern::matches(std::string_view path) const {
    // reached[p]: the path up to here matches the first p parts. One pass over the path, whatever the pattern.
    std::vector<bool> reached(parts_.size() + 1, false);
    auto const pass_any_folders = [&] {
        for (std::size_t p = 0; p < parts_.size(); ++p)
            if (reached[p] && parts_[p] == "**") reached[p + 1] = true;
    };
    reached[0] = true;
    pass_any_folders();
    for (auto const& part : parts_of(path)) {
        std::vector<bool> next(reached.size(), false);
        for (std::size_t p = 0; p < parts_.size(); ++p) {
            if (!reached[p]) continue;
            if (parts_[p] == "**")
                next[p] = true;
            else if (fnmatch(parts_[p].c_str(), part.c_str(), FNM_PERIOD) == 0)
                next[p + 1] = true;
        }
        reached = std::move(next);
        pass_any_folders();
    }
    return reached.back();
}
