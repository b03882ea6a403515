#include "bankwright/reports/junit.hpp"
#include "support/backwards.hpp"

#include <doctest/doctest.h>

using namespace bankwright;

namespace {

bool contains(std::string const& text, std::string const& part) { return text.find(part) != std::string::npos; }

} // namespace

TEST_CASE("what fails depends on the level, and an accepted finding is skipped") {
    Verdicts const verdicts{support::backwards()};
    CHECK(contains(findings_junit(verdicts), "tests=\"4\" failures=\"1\" errors=\"0\" skipped=\"1\""));
    CHECK(contains(findings_junit(verdicts, Level::warning), "tests=\"4\" failures=\"2\" errors=\"0\" skipped=\"1\""));
    CHECK(contains(findings_junit(verdicts, Level::note), "tests=\"4\" failures=\"3\" errors=\"0\" skipped=\"1\""));
}

TEST_CASE("a file in which nothing is wrong is one passed case") {
    auto const xml = findings_junit({support::nothing_wrong()});
    CHECK(contains(xml, "<testsuite name=\"good.toml\" tests=\"1\" failures=\"0\""));
    CHECK(contains(xml, "<testcase name=\"nothing wrong\" classname=\"good.toml\" time=\"0\"/>"));
}

TEST_CASE("markup in names and messages stays text") {
    Verdict verdict;
    verdict.file = "<a & \"b\">.toml";
    verdict.findings.push_back({.rule = "file/syntax", .message = "</failure> \x01"});
    auto const xml = findings_junit({verdict});
    CHECK(contains(xml, "&lt;a &amp; &quot;b&quot;&gt;.toml"));
    CHECK(contains(xml, "&lt;/failure&gt;"));
    CHECK_FALSE(contains(xml, "\x01"));
}
