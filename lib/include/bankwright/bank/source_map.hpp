// Where in the file does each part and key stand? Empty for a bank made in C++ or Python.
#pragma once

#include "bankwright/findings/position.hpp"
#include "bankwright/linkage.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

namespace bankwright {

class SourceMap {
public:
    // key empty: the part as a whole. Parts that are no parts have reserved names: "[system]", "[[accept]] 1", ...
    void add(std::string const& part, std::string key, Region region);

    // A part and all its keys, each with `key` and `region`.
    template <class Keys>
    void add_with_keys(std::string const& part, Region whole, Keys const& keys) {
        auto& places = places_of(part, keys.size() + 1);
        places.push_back({{}, whole});
        for (auto const& key : keys)
            places.push_back({key.key, key.region});
    }

    // The key's region; the part's where the key has none (it came from a model, say); none where the part has none.
    std::optional<Region> find(std::string const& part, std::string const& key = {}) const;

    bool empty() const { return parts_.empty(); }

private:
    struct Place {
        std::string key;
        Region region;
    };
    std::vector<Place>& places_of(std::string const& part, std::size_t more); // with room for so many more

    std::unordered_map<std::string, std::vector<Place>> parts_; // a part has few keys
};

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/bank/source_map_inl.hpp"
#endif
