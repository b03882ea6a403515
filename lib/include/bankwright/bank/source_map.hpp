// Where in the file does each part and key stand? Empty for a bank made in C++ or Python.
#pragma once

#include "bankwright/findings/position.hpp"

#include <map>
#include <optional>
#include <string>
#include <utility>

namespace bankwright {

class SourceMap {
public:
    // key empty: the part as a whole. Parts that are no parts have reserved names: "[system]", "[[accept]] 1", ...
    void add(std::string part, std::string key, Region region) { regions_[{std::move(part), std::move(key)}] = region; }

    // The key's region; the part's where the key has none (it came from a model, say); none where the part has none.
    std::optional<Region> find(std::string const& part, std::string const& key = {}) const {
        if (auto const it = regions_.find({part, key}); it != regions_.end()) return it->second;
        if (auto const it = regions_.find({part, std::string()}); it != regions_.end()) return it->second;
        return std::nullopt;
    }

    bool empty() const { return regions_.empty(); }

private:
    std::map<std::pair<std::string, std::string>, Region> regions_;
};

} // namespace bankwright
