// Every bank in data/examples reads without a finding: the sound ones and those that are miswired on purpose.
#include "bankwright/config/read.hpp"
#include "bankwright/config/write.hpp"
#include "support/findings_text.hpp"

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include <doctest/doctest.h>

using namespace bankwright;

TEST_SUITE_BEGIN("config/examples");

TEST_CASE("the examples read clean, and come back the same when written") {
    int count = 0;
    for (auto const& file : std::filesystem::directory_iterator(BANKWRIGHT_SOURCE_DIR "/data/examples")) {
        if (file.path().extension() != ".toml") continue;
        CAPTURE(file.path().filename().string());
        ++count;
        std::ifstream stream(file.path(), std::ios::binary);
        std::string const text{std::istreambuf_iterator<char>(stream), {}};
        auto const result = read(text);
        CHECK(test::lines_of(result.findings) == std::vector<std::string>{});
        CHECK(result.left_out.empty());
        auto const canonical = write(result.bank);
        CHECK((read(canonical).bank == result.bank));
        CHECK(write(read(canonical).bank) == canonical);
    }
    CHECK(count >= 14);
}

TEST_SUITE_END();
