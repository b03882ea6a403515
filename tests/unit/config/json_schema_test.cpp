#include "bankwright/config/json_schema.hpp"
#include "bankwright/config/key_reference.hpp"
#include "bankwright/config/keys.hpp"
#include "bankwright/config/reading_keys.hpp"

#include <fstream>
#include <iterator>
#include <string>

#include <doctest/doctest.h>

using namespace bankwright;

TEST_SUITE_BEGIN("config/json_schema");

namespace {
std::string committed(char const* path) {
    std::ifstream file(path, std::ios::binary);
    REQUIRE(file.good());
    return {std::istreambuf_iterator<char>(file), {}};
}
} // namespace

TEST_CASE("the committed schemas are those that the tables of keys give") {
    INFO("write it anew: bankwright schema > data/schema/bank.schema.json, or with --readings or --log");
    CHECK((committed(BANKWRIGHT_SOURCE_DIR "/data/schema/bank.schema.json") == json_schema()));
    CHECK((committed(BANKWRIGHT_SOURCE_DIR "/data/schema/readings.schema.json") == readings_json_schema()));
    CHECK((committed(BANKWRIGHT_SOURCE_DIR "/data/schema/log.schema.json") == log_json_schema()));
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
    for (auto const* section : {&meter_section, &clamp_section, &state_section, &volts_section, &amps_section}) {
        CHECK(page.find("[" + std::string(section->name) + "]") != std::string::npos);
        for (auto const& key : section->keys)
            CHECK(page.find("| `" + std::string(key.name) + "` |") != std::string::npos);
    }
    CHECK(page.find("Needs exactly one of `current`, or `power`, or `resistance`.") != std::string::npos);
    CHECK(page.find("| `charge` | from 0 % to 100 % | `\"98 %\"` | 100 % | state of charge |") != std::string::npos);
}

TEST_SUITE_END();
