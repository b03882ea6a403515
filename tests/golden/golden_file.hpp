// Yesterday's output, kept in files of tests/golden. BANKWRIGHT_UPDATE_GOLDEN=1 writes them anew: read the difference
// before it is committed.
#pragma once

#include "bankwright/version.hpp"

#include <cstdlib>
#include <fstream>
#include <iterator>
#include <string>

#include <doctest/doctest.h>

namespace golden {

inline void check_golden(std::string const& name, std::string text) {
    std::string const version = BANKWRIGHT_VERSION;
    for (auto at = text.find(version); at != std::string::npos; at = text.find(version))
        text.replace(at, version.size(), "VERSION");
    auto const path = BANKWRIGHT_SOURCE_DIR "/tests/golden/" + name;
    if (std::getenv("BANKWRIGHT_UPDATE_GOLDEN") != nullptr) std::ofstream(path, std::ios::binary) << text;
    std::ifstream file(path, std::ios::binary);
    std::string const kept(std::istreambuf_iterator<char>(file), {});
    REQUIRE_FALSE(kept.empty());
    CHECK(text == kept);
}

} // namespace golden
