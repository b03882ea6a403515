// Bodies of source_map.hpp.
#pragma once

#include "bankwright/bank/source_map.hpp"

#include <utility>

namespace bankwright {

BANKWRIGHT_INLINE void SourceMap::add(std::string const& part, std::string key, Region region) {
    parts_[part].push_back({std::move(key), region});
}

BANKWRIGHT_INLINE std::vector<SourceMap::Place>& SourceMap::places_of(std::string const& part, std::size_t more) {
    auto& places = parts_[part];
    places.reserve(places.size() + more);
    return places;
}

BANKWRIGHT_INLINE std::optional<Region> SourceMap::find(std::string const& part, std::string const& key) const {
    auto const at = parts_.find(part);
    if (at == parts_.end()) return std::nullopt;
    std::optional<Region> whole;
    for (auto const& [name, region] : at->second) {
        if (name == key) return region;
        if (name.empty()) whole = region;
    }
    return whole;
}

} // namespace bankwright
