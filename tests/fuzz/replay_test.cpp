#include "fuzz/targets.hpp"

#include <filesystem>
#include <fstream>
#include <iterator>

#include <doctest/doctest.h>

namespace fs = std::filesystem;

// The corpus, and every input that ever broke a promise: tests/fuzz/corpus/TARGET and tests/fuzz/found/TARGET.
TEST_CASE("the whole corpus, and everything the fuzzer ever found, keeps the promises") {
    std::size_t replayed = 0;
    fs::path const here = fs::path(BANKWRIGHT_SOURCE_DIR) / "tests/fuzz";
    for (auto const& target : fuzz::targets)
        for (auto const* folder : {"corpus", "found"}) {
            auto const inputs = here / folder / target.name;
            if (!fs::exists(inputs)) continue;
            for (auto const& entry : fs::directory_iterator(inputs)) {
                CAPTURE(entry.path().string());
                std::ifstream file(entry.path(), std::ios::binary);
                std::string const bytes{std::istreambuf_iterator<char>(file), {}};
                target.run(bytes);
                ++replayed;
            }
        }
    CHECK(replayed >= 20);
}

TEST_CASE("every example, whole and cut off, keeps the promises") {
    for (auto const& entry : fs::directory_iterator(fs::path(BANKWRIGHT_SOURCE_DIR) / "data/examples")) {
        if (!entry.is_regular_file()) continue;
        CAPTURE(entry.path().string());
        std::ifstream file(entry.path(), std::ios::binary);
        std::string const text{std::istreambuf_iterator<char>(file), {}};
        for (std::size_t length = text.size();; length -= std::min<std::size_t>(length, 97)) {
            fuzz::round_trip({text.data(), length});
            fuzz::json({text.data(), length});
            if (length == 0) break;
        }
    }
}
