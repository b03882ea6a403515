// Where in the file does each finding stand? Rules name a part and a key; the source map knows the line.
#pragma once

#include "bankwright/bank/source_map.hpp"
#include "bankwright/findings/finding.hpp"

namespace bankwright {

// Gives every finding that has no region yet that of its first part and key; where the map does not know that part, of
// the first other part that it knows. A finding about the bank as a whole keeps none.
inline void locate(Findings& findings, SourceMap const& map) {
    for (auto& finding : findings) {
        if (finding.region) continue;
        std::string key = finding.key;
        for (auto const& part : finding.parts) {
            if ((finding.region = map.find(part, key))) break;
            key.clear(); // it is a key of the first part only
        }
    }
}

} // namespace bankwright
