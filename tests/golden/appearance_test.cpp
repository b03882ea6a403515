// What did the reports look like yesterday? BANKWRIGHT_UPDATE_GOLDEN=1 writes them anew: read the difference before it
// is committed.
#include "bankwright/reports/json.hpp"
#include "bankwright/reports/junit.hpp"
#include "bankwright/reports/sarif.hpp"
#include "bankwright/reports/text.hpp"
#include "bankwright/version.hpp"

#include "support/backwards.hpp"

#include <doctest/doctest.h>

#include <cstdlib>
#include <fstream>

using namespace bankwright;

namespace {

void check_golden(std::string const& name, std::string text) {
    std::string const version = BANKWRIGHT_VERSION;
    for (auto at = text.find(version); at != std::string::npos; at = text.find(version))
        text.replace(at, version.size(), "VERSION");
    auto const path = BANKWRIGHT_SOURCE_DIR "/tests/golden/" + name;
    if (std::getenv("BANKWRIGHT_UPDATE_GOLDEN") != nullptr) std::ofstream(path, std::ios::binary) << text;
    auto const golden = support::read_file(path);
    REQUIRE_FALSE(golden.empty());
    CHECK(text == golden);
}

} // namespace

TEST_CASE("the text report looks as it did") { check_golden("backwards.txt", findings_text({support::backwards()})); }

TEST_CASE("the text report with everything looks as it did") {
    check_golden("backwards.all.txt", findings_text({support::backwards()}, {.all = true}));
}

TEST_CASE("the JSON report looks as it did") { check_golden("backwards.json", findings_json({support::backwards()})); }

TEST_CASE("the SARIF report looks as it did") {
    check_golden("backwards.sarif", findings_sarif({support::backwards()}, support::some_rules()));
}

TEST_CASE("the JUnit report looks as it did") { check_golden("backwards.xml", findings_junit({support::backwards()})); }
