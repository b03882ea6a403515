// What did the reports look like yesterday?
#include "bankwright/reports/findings_json.hpp"
#include "bankwright/reports/findings_text.hpp"
#include "bankwright/reports/junit.hpp"
#include "bankwright/reports/sarif.hpp"
#include "golden/golden_file.hpp"
#include "support/backwards.hpp"

#include <doctest/doctest.h>

using namespace bankwright;
using golden::check_golden;

TEST_CASE("the text report looks as it did") { check_golden("backwards.txt", findings_text({support::backwards()})); }

TEST_CASE("the text report with everything looks as it did") {
    check_golden("backwards.all.txt", findings_text({support::backwards()}, {.all = true}));
}

TEST_CASE("the JSON report looks as it did") { check_golden("backwards.json", findings_json({support::backwards()})); }

TEST_CASE("the SARIF report looks as it did") {
    check_golden("backwards.sarif", findings_sarif({support::backwards()}, support::some_rules()));
}

TEST_CASE("the JUnit report looks as it did") { check_golden("backwards.xml", findings_junit({support::backwards()})); }
