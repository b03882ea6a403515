// What is refused before it costs time or memory, and what no text may do.
#include "bankwright/config/read.hpp"
#include "support/findings_text.hpp"

#include <string>
#include <vector>

#include <doctest/doctest.h>

using namespace bankwright;
using test::lines_of;
using Lines = std::vector<std::string>;

TEST_SUITE_BEGIN("config/limits");

namespace {
std::string repeated(std::string const& piece, int times) {
    std::string text;
    for (int i = 0; i < times; ++i)
        text += piece;
    return text;
}
} // namespace

TEST_CASE("a file above the limit is not parsed") {
    ReadLimits limits;
    limits.bytes = 20;
    auto const result = read("bankwright = 1\n# a comment that is too long\n", limits);
    CHECK(lines_of(result.findings) == Lines{"1:1-1:2 file/too-large"});
    CHECK(result.findings[0].message == "the file has more than 20 bytes; a bank file has fewer");
    CHECK_FALSE(result.readable);
}

TEST_CASE("deep nesting is refused where it goes too deep") {
    for (std::string const bracket : {"[", "{x="}) {
        auto const result = read("a = " + repeated(bracket, 100'000));
        REQUIRE(result.findings.size() == 1);
        CHECK(result.findings[0].rule == "file/too-large");
        CHECK(result.findings[0].message == "nested more than 32 deep");
        CHECK_FALSE(result.readable);
    }
    CHECK(lines_of(read("bankwright = 1\nq = " + repeated("[", 33)).findings) == Lines{"2:37-2:38 file/too-large"});
    CHECK(read("bankwright = 1\nq = " + repeated("[", 32) + repeated("]", 32)).readable);
}

TEST_CASE("a long chain of dotted names is nesting too") {
    CHECK(lines_of(read("a" + repeated(".a", 100'000) + " = 1").findings) == Lines{"1:64-1:65 file/too-large"});
    CHECK(lines_of(read("[a" + repeated(" . \"a\"", 100'000) + "]").findings).front().find("file/too-large") !=
          std::string::npos);
}

TEST_CASE("brackets and dots in texts and comments are no nesting") {
    auto const result =
        read("bankwright = 1\nname = \"" + repeated("[{.\\\"", 50) + "\" # " + repeated("[{.", 50) + "\n");
    CHECK(lines_of(result.findings) == Lines{});
    CHECK(lines_of(read("bankwright = 1\nname = '''" + repeated("[\n", 50) + "'''\n").findings) == Lines{});
}

TEST_CASE("too many parts, too long a name") {
    ReadLimits limits;
    limits.parts = 2;
    limits.id_length = 4;
    std::string const three = "bankwright = 1\n[switches]\nS = {}\nT = {}\n[busbars]\nU = {}\n";
    CHECK(lines_of(read(three, limits).findings) == Lines{"5:1-5:10 file/too-large"});
    CHECK_FALSE(read(three, limits).readable);
    CHECK(lines_of(read("bankwright = 1\n[switches]\nabcde = {}\nabcd = {}\n", limits).findings) ==
          Lines{"3:1-3:11 file/too-large abcde"});
}

TEST_CASE("more findings than anybody reads are counted") {
    ReadLimits limits;
    limits.findings = 3;
    std::string const unknown = "a = 1\nb = 1\nc = 1\nd = 1\ne = 1\n",
                      wrong = "[batteries]\nA = { chemistry = \"agm\", capacity = 1, charge = 1, voltage = 1, health = "
                              "1, reserve = 1 }\n";
    for (auto const& five : {unknown, wrong}) {
        auto const result = read("bankwright = 1\n" + five, limits);
        REQUIRE(result.findings.size() == 4);
        CHECK(result.findings[3].rule == "file/too-large");
        CHECK(result.findings[3].message == "2 more findings; at most 3 are shown");
    }
}

TEST_CASE("what is not UTF-8 is shown where it stands") {
    CHECK(lines_of(read("bankwright = 1\nname = \"M\xF6we\"\n").findings) == Lines{"2:10-2:11 file/syntax"});
    CHECK(lines_of(read("bankwright = 1\n# \xC0\x80\n").findings) == Lines{"2:3-2:4 file/syntax"});
    CHECK(lines_of(read(std::string("a = 1\n\0", 7)).findings) == Lines{"2:1-2:2 file/syntax"});
    auto const utf16 = read(std::string("\xFF\xFE"
                                        "b\0",
                                        4));
    CHECK(lines_of(utf16.findings) == Lines{"1:1-1:2 file/syntax"});
    CHECK(utf16.findings[0].message == "the text is UTF-16; a bank file is UTF-8");
}

TEST_CASE("twenty thousand parts that all hang on nothing are read in bounded time") {
    ReadLimits limits;
    limits.bytes = 4u << 20;
    limits.parts = 20'000;
    std::string text = "bankwright = 1\n[batteries]\n";
    for (int i = 0; i < 9'000; ++i)
        text += "battery" + std::to_string(i) + " = { voltage = \"12 V\", emf = \"12 V\", resistance = \"1 mohm\" }\n";
    text += "[cables]\n";
    for (int i = 0; i < 9'000; ++i)
        text += "c" + std::to_string(i) + " = { from = \"batery\", to = \"x\", resistance = \"1 mohm\" }\n";
    auto const result = read(text, limits);
    CHECK(result.findings.size() == 1'001);
    CHECK(result.bank.batteries.size() == 9'000);
}

TEST_CASE("any text cut short anywhere gives findings and no surprise") {
    std::string const text = "bankwright = 1\n[models]\nm = { size = \"6 AWG\" }\n[cables.c]\nmodel = \"m\"\nfrom = "
                             "'A+'\n[[accept]]\nrule = \"\"\"x\n\"\"\"\n";
    for (std::size_t length = 0; length <= text.size(); ++length) {
        auto const result = read(text.substr(0, length));
        for (auto const& finding : result.findings) {
            REQUIRE(finding.region.has_value());
            CHECK(finding.region->begin.line >= 1);
            CHECK(finding.region->begin.column >= 1);
        }
    }
}

TEST_SUITE_END();

TEST_CASE("more names that stand twice than are looked for are an error of the file") {
    std::string text = "bankwright = 1\n[loads]\n";
    for (int i = 0; i < 25; ++i)
        text += "L = { power = \"5 W\" }\n";
    auto const result = read(text);
    CHECK(result.findings.size() == 21);
    CHECK_FALSE(result.readable);
}
