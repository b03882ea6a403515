#include "bankwright/config/json_schema.hpp"
#include "bankwright/config/key_reference.hpp"
#include "bankwright/config/keys.hpp"

#include <doctest/doctest.h>

#include <fstream>
#include <iterator>
#include <string>

using namespace bankwright;

TEST_SUITE_BEGIN("config/json_schema");

TEST_CASE("the committed schema is the one that the table of keys gives") {
    std::ifstream file(BANKWRIGHT_SOURCE_DIR "/data/schema/bank.schema.json", std::ios::binary);
    REQUIRE(file.good());
    std::string const committed{std::istreambuf_iterator<char>(file), {}};
    INFO("write it anew: bankwright schema > data/schema/bank.schema.json");
    CHECK((committed == json_schema()));
}

TEST_CASE("the reference has every section and key") {
    auto const page = key_reference();
    for (auto const& section : part_sections) {
        CHECK(page.find("## `[" + std::string(section.name) + "]`") != std::string::npos);
        for (auto const& key : section.keys) {
            CAPTURE(key.name);
            CHECK(page.find("| `" + std::string(key.name) + "` |") != std::string::npos);
        }
    }
    CHECK(page.find("Needs exactly one of `current`, or `power`, or `resistance`.") != std::string::npos);
    CHECK(page.find("| `charge` | from 0 % to 100 % | `\"98 %\"` | 100 % | state of charge |") != std::string::npos);
}

TEST_SUITE_END();
