#include "bankwright/config/read.hpp"
#include "support/findings_text.hpp"

#include <string>
#include <vector>

#include <doctest/doctest.h>

using namespace bankwright;
using test::lines_of;
using Lines = std::vector<std::string>;

TEST_SUITE_BEGIN("config/accept");

namespace {
ReadResult read_with(std::string const& more) {
    return read("bankwright = 1\n[loads]\nlamp = { power = \"5 W\" }\n" + more);
}
} // namespace

TEST_CASE("an accepted finding keeps its rule, part and reason") {
    auto const result = read_with("[[accept]]\nrule = \"conductor/color\"\npart = \"lamp\"\nreason = \"labeled\"\n"
                                  "[[accept]]\nrule = \"load/runtime\"\nreason = \"moored\"\n");
    CHECK(lines_of(result.findings) == Lines{});
    CHECK(result.bank.accepted ==
          std::vector<Acceptance>{{"conductor/color", "lamp", "labeled"}, {"load/runtime", "", "moored"}});
}

TEST_CASE("accepting without a reason is a warning, and still accepts") {
    auto const result =
        read_with("[[accept]]\nrule = \"load/runtime\"\n[[accept]]\nrule = \"load/runtime\"\nreason = \" \"\n");
    CHECK(lines_of(result.findings) == Lines{"4:1-4:11 file/accept-without-reason [[accept]] 1",
                                             "8:1-8:13 file/accept-without-reason [[accept]] 2.reason"});
    CHECK(result.findings[0].level == Level::warning);
    CHECK(result.bank.accepted.size() == 2);
}

TEST_CASE("an acceptance needs a rule, and a part that exists") {
    auto const result =
        read_with("[[accept]]\nreason = \"x\"\n[[accept]]\nrule = \"a/b\"\npart = \"lmap\"\nreason = \"x\"\n"
                  "[[accept]]\nrule = 5\nwhy = \"x\"\nreason = \"x\"\n");
    CHECK(lines_of(result.findings) ==
          Lines{"4:1-4:11 file/missing-key [[accept]] 1", "8:1-8:14 file/bad-value [[accept]] 2.part",
                "11:1-11:9 file/bad-value [[accept]] 3.rule", "12:1-12:10 file/unknown-key [[accept]] 3.why"});
    CHECK(result.findings[1].help == "did you mean `lamp`?");
    CHECK(result.bank.accepted.empty());
}

TEST_CASE("what is not a table among the accepted findings") {
    auto const result = read("bankwright = 1\naccept = [ { rule = \"a/b\", reason = \"x\" }, 5 ]\n");
    CHECK(lines_of(result.findings) == Lines{"2:44-2:45 file/bad-value [[accept]] 2"});
    CHECK(result.bank.accepted.size() == 1);
}

TEST_SUITE_END();
