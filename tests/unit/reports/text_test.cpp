#include "bankwright/reports/findings_text.hpp"
#include "support/backwards.hpp"

#include <doctest/doctest.h>

using namespace bankwright;

namespace {

bool contains(std::string const& text, std::string const& part) { return text.find(part) != std::string::npos; }

std::size_t occurrences(std::string const& text, std::string const& part) {
    std::size_t number = 0;
    for (auto at = text.find(part); at != std::string::npos; at = text.find(part, at + 1))
        ++number;
    return number;
}

} // namespace

TEST_CASE("a finding points at its line with file, line, column, level, message and rule") {
    auto const text = findings_text({support::backwards()});
    CHECK(contains(text,
                   "backwards.toml:9:1: error: battery `aft` opposes the others of its string: 0 V at `troll` where "
                   "24 V is declared [wiring/reversed-battery]\n"));
    CHECK(contains(text, " 9 | aft  = { chemistry"));
    CHECK(contains(text, "   | ^~~~"));
    CHECK(contains(text, "  found: 0 V  expected: 24 V\n"));
    CHECK(contains(text, "  help: exchange the leads on `aft`\n"));
}

TEST_CASE("the caret stands under the key that is to blame") {
    auto const verdict = support::backwards();
    auto const text = finding_text(verdict.findings[1], verdict.file, verdict.text);
    auto const line = text.find(" 9 | ");
    auto const carets = text.find("   | ");
    REQUIRE(line != std::string::npos);
    REQUIRE(carets != std::string::npos);
    auto const under = text.find("capacity = \"80 Ah\"", line) - line;
    CHECK(text.find('^', carets) - carets == under);
}

TEST_CASE("a finding about the whole bank has no line and no column") {
    CHECK(contains(findings_text({support::backwards()}), "\nbackwards.toml: note: links differ in length ["));
}

TEST_CASE("consequences are counted, and shown when asked for") {
    auto const verdict = support::backwards();
    CHECK(contains(findings_text({verdict}), "  ... and 2 consequences of this, shown with --all\n"));
    CHECK_FALSE(contains(findings_text({verdict}), "gets no voltage"));
    auto const all = findings_text({verdict}, {.all = true});
    CHECK(contains(all, "  consequence: `troll` gets no voltage\n"));
    CHECK_FALSE(contains(all, "--all"));
    auto one = verdict.findings[0];
    one.consequences.resize(1);
    CHECK(contains(finding_text(one, "x", ""), "... and 1 consequence of this"));
}

TEST_CASE("an accepted finding is counted, and shown with its reason when asked for") {
    auto const verdict = support::backwards();
    auto const text = findings_text({verdict});
    CHECK_FALSE(contains(text, "too-far"));
    CHECK(contains(text, "backwards.toml: 1 error, 1 warning, 1 note, 1 accepted\n"));
    auto const all = findings_text({verdict}, {.all = true});
    CHECK(contains(all, "backwards.toml:15:60: accepted error: "));
    CHECK(contains(all, "  accepted because: the cable is in conduit, inside the battery box\n"));
}

TEST_CASE("a bank in which nothing is wrong gets one calm line") {
    CHECK(findings_text({support::nothing_wrong()}) == "good.toml: 3S1P, nothing wrong\n");
    auto unknown = support::nothing_wrong();
    unknown.arrangement.reset();
    CHECK(findings_text({unknown}) == "good.toml: nothing wrong\n");
}

TEST_CASE("several files get a line each and one for all") {
    auto const text = findings_text({support::backwards(), support::nothing_wrong()});
    CHECK(contains(text, "good.toml: 3S1P, nothing wrong\n2 files: 1 error, 1 warning, 1 note, 1 accepted\n"));
}

TEST_CASE("the cautions are said once, and only where an error sends somebody to the battery box") {
    auto const two = findings_text({support::backwards(), support::backwards()});
    CHECK(occurrences(two, "before you touch the bank:") == 1);
    for (auto const* word :
         {"short", "disconnect", "eye protection", "jewelry", "ventilate", "acid", "heavy", "inverter", "electrician"})
        CHECK_MESSAGE(contains(two, word), word);
    auto spelling = support::nothing_wrong();
    spelling.findings.push_back({.rule = "file/unknown-key"});
    CHECK_FALSE(contains(findings_text({spelling}), "before you touch"));
    auto warning = support::nothing_wrong();
    warning.findings.push_back({.rule = "conductor/voltage-drop", .level = Level::warning});
    CHECK_FALSE(contains(findings_text({warning}), "before you touch"));
    auto accepted = support::nothing_wrong();
    accepted.findings.push_back({.rule = "protection/missing", .accepted = true});
    CHECK_FALSE(contains(findings_text({accepted}), "before you touch"));
}

TEST_CASE("nothing from a file can steer the terminal") {
    Verdict verdict;
    verdict.file = "a\x1b[2Jb\n.toml";
    verdict.text = "x = \"\x1b]0;title\x07\"\n";
    verdict.arrangement = "1S\x1b[31m1P";
    verdict.findings.push_back({.rule = "file/\x1b[1mx",
                                .message = "found `\x1b[5m\u202e`",
                                .help = "say\rit\nagain",
                                .region = Region{{1, 1}, {1, 2}},
                                .accepted = true,
                                .accepted_because = "\x1b[8m",
                                .consequences = {"\x1b[7m"}});
    auto const text = findings_text({verdict}, {.all = true});
    for (char const c : text)
        CHECK((c == '\n' || static_cast<unsigned char>(c) >= 0x20));
    CHECK_FALSE(contains(text, "\u202e"));
    CHECK_FALSE(contains(text, "\nagain"));
}

TEST_CASE("color wraps the words and changes none of them") {
    auto const plain = findings_text({support::backwards()});
    auto colored = findings_text({support::backwards()}, {.color = true});
    CHECK(contains(colored, "\x1b[1;31merror:\x1b[0m"));
    CHECK(contains(colored, "\x1b[1;33mwarning:\x1b[0m"));
    CHECK_FALSE(contains(plain, "\x1b"));
    for (auto at = colored.find('\x1b'); at != std::string::npos; at = colored.find('\x1b'))
        colored.erase(at, colored.find('m', at) - at + 1);
    CHECK(colored == plain);
}
