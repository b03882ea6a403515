#include "bankwright/config/read_duty.hpp"

#include <algorithm>
#include <string>

#include <doctest/doctest.h>

using namespace bankwright;

namespace {

bool says(DutyResult const& read, std::string const& rule, std::string const& words) {
    return std::any_of(read.findings.begin(), read.findings.end(), [&](Finding const& finding) {
        return finding.rule == rule && (finding.message + finding.help).find(words) != std::string::npos;
    });
}

} // namespace

TEST_CASE("a duty file gives its legs in their order") {
    auto const read = read_duty("bankwright-duty = 1\nname = \"out and back\"\nrepeat = true\n"
                                "[[leg]]\nthrottle = \"60 %\"\nduration = \"20 min\"\n"
                                "[[leg]]\nthrottle = \"0 %\"\nduration = \"1 h\"\n");
    CHECK(read.findings.empty());
    CHECK(read.duty.repeat);
    REQUIRE(read.duty.legs.size() == 2);
    CHECK(read.duty.legs[0].throttle == Throttle::of(0.6));
    CHECK(read.duty.legs[0].duration.value() == doctest::Approx(1200.0));
    CHECK(read.duty.legs[1].throttle == Throttle::of(0.0));
}

TEST_CASE("everything that is wrong with a duty file is said at once, where it stands") {
    auto const read = read_duty("repet = true\n[[leg]]\nthrottle = \"160 %\"\nduration = \"20\"\n"
                                "[[leg]]\nthrotle = \"60 %\"\nduration = \"0 min\"\n");
    CHECK(says(read, "file/unknown-key", "`repeat`"));
    CHECK(says(read, "file/unknown-key", "`throttle`"));
    CHECK(says(read, "file/bad-value", "160 %"));
    CHECK(says(read, "file/bad-unit", "20"));
    CHECK(says(read, "file/missing-key", "[[leg]] 2 lacks `throttle`"));
    CHECK(says(read, "file/bad-value", "0 min"));
    CHECK(read.duty.legs.empty());
    REQUIRE(!read.findings.empty());
    CHECK(read.findings.front().region);
}

TEST_CASE("a duty file without legs, a bank in its place and what is no TOML are refused") {
    CHECK(says(read_duty(""), "file/missing-key", "[[leg]]"));
    CHECK(says(read_duty("[leg]\nthrottle = \"60 %\"\n"), "file/bad-value", "double brackets"));
    CHECK(says(read_duty("leg = [1, 2]\n"), "file/bad-value", "expected a table"));
    auto const bank = read_duty("bankwright = 1\n[batteries]\n");
    CHECK(says(bank, "file/bad-value", "a bank file"));
    CHECK_FALSE(bank.readable);
    CHECK_FALSE(read_duty("[[leg").readable);
}
