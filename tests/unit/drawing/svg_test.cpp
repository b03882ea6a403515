#include "bankwright/drawing/svg.hpp"
#include "bankwright/drawing/words.hpp"
#include "bankwright/rules/check.hpp"
#include "bankwright/units/print.hpp"
#include "miswires/good_banks.hpp"
#include "support/any_bank.hpp"
#include "support/jon_boat.hpp"
#include "support/random_bank.hpp"

#include <stdexcept>

#include <doctest/doctest.h>

using namespace bankwright;
using drawing::to_svg;

namespace {

drawing::DrawOptions everything(Bank const& bank) {
    drawing::DrawOptions options;
    auto checked = check(bank);
    options.findings = std::move(checked.findings);
    options.arrangement = checked.arrangement;
    options.point = operating_point(bank);
    return options;
}

bool has(std::string const& text, std::string const& piece) { return text.find(piece) != std::string::npos; }

int count(std::string const& text, std::string const& piece) {
    int found = 0;
    for (auto at = text.find(piece); at != std::string::npos; at = text.find(piece, at + 1))
        ++found;
    return found;
}

// Every tag is closed by its own: enough to tell that what a user wrote has not become markup.
bool is_nested(std::string const& svg) {
    std::vector<std::string> open;
    for (auto at = svg.find('<'); at != std::string::npos; at = svg.find('<', at + 1)) {
        auto const end = svg.find('>', at);
        if (end == std::string::npos) return false;
        auto const tag = svg.substr(at + 1, end - at - 1);
        if (tag.front() == '/') {
            if (open.empty() || open.back() != tag.substr(1)) return false;
            open.pop_back();
        } else if (tag.back() != '/') {
            open.push_back(tag.substr(0, tag.find(' ')));
        }
    }
    return open.empty();
}

} // namespace

TEST_CASE("the same bank gives the same bytes") {
    for (std::uint64_t seed = 0; seed < 20; ++seed) {
        auto const bank = support::random_weird_bank(seed);
        CHECK(to_svg(bank, everything(bank)) == to_svg(bank, everything(bank)));
    }
}

TEST_CASE("every battery, conductor and reading is there as text") {
    auto const bank = support::jon_boat();
    auto const svg = to_svg(bank, everything(bank));
    CHECK(is_nested(svg));
    for (auto const* word : {">A</text>", ">B</text>", ">C</text>", ">J1</text>", ">main</text>", ">troll</text>"})
        CHECK(has(svg, word));
    auto const point = operating_point(bank);
    CHECK(has(svg, ">" + print(*voltage_at(point, "C+")) + "</text>"));
    CHECK(has(svg, ">" + drawing::printed_amperes(reading_of(point, "main").current.value()) + "</text>"));
    CHECK(has(svg, "role=\"img\""));
    CHECK(has(svg, "<title id=\"bankwright-title\">Wiring diagram of 16-ft jon boat"));
    CHECK(has(svg, "cable main: CB.load to bow+, 12 m\u03a9"));
    CHECK_FALSE(has(svg, "No room"));
}

TEST_CASE("it needs nothing else and meddles with nothing: no script, style, font or link") {
    auto const bank = support::jon_boat();
    auto const svg = to_svg(bank, everything(bank));
    for (auto const* piece :
         {"<script", "<style", "<image", "<use", "href", "url(", "onload", "@import", "<!DOCTYPE", "<?"})
        CHECK_FALSE(has(svg, piece));
    CHECK(count(svg, "http") == 1); // the name space
}

TEST_CASE("several drawings can share a page") {
    drawing::DrawOptions options;
    options.prefix = "left";
    auto const svg = to_svg(support::jon_boat(), options);
    CHECK(count(svg, "id=\"") == count(svg, "id=\"left-"));
    CHECK(count(svg, "class=\"") == count(svg, "class=\"left-"));
}

TEST_CASE("findings are marked on their parts by word, and listed with what to do") {
    auto bank = support::jon_boat();
    bank.jumpers[0].to = "B+";
    bank.jumpers[1].from = "B-";
    auto const options = everything(bank);
    auto const svg = to_svg(bank, options);
    REQUIRE(options.findings.front().rule == "wiring/reversed-battery");
    CHECK(count(svg, ">error 1</text>") == 2); // on B and in the list
    CHECK(has(svg, "[wiring/reversed-battery]"));
    CHECK(has(svg, "what to do: turn B around"));
}

TEST_CASE("of very many findings, and of conductors that end nowhere, as many are told as anybody reads") {
    auto bank = support::jon_boat();
    for (int i = 0; i < 43; ++i)
        bank.cables.push_back(
            support::plain_run("stray" + std::to_string(i), "A+", "nowhere" + std::to_string(i), 1e-3));
    drawing::DrawOptions options;
    for (int i = 0; i < 45; ++i)
        options.findings.push_back(
            {.rule = "matching/mixed-age", .message = "found " + std::to_string(i), .parts = {"A"}});
    auto const svg = to_svg(bank, options);
    CHECK(is_nested(svg));
    CHECK(has(svg, "found 39 "));
    CHECK_FALSE(has(svg, "found 40 "));
    CHECK(has(svg, ">and 5 more<"));
    CHECK(has(svg, "Not drawn, since an end is on no terminal of this bank:"));
    CHECK(has(svg, ">and 3 more<"));
}

TEST_CASE("an accepted finding is not marked") {
    auto bank = support::jon_boat();
    auto options = everything(bank);
    options.findings = {{.rule = "matching/mixed-age", .message = "looked at", .parts = {"A"}, .accepted = true}};
    CHECK_FALSE(has(to_svg(bank, options), "looked at"));
}

TEST_CASE("the fault loop is told in the legend") {
    auto bank = support::jon_boat();
    CHECK_FALSE(has(to_svg(bank, everything(bank)), "fault loop"));
    bank.jumpers.push_back(support::plain_run("wrong", "B+", "A-", 1e-3));
    CHECK(has(to_svg(bank, everything(bank)), "fault loop"));
}

TEST_CASE("a bank without an operating point is drawn and says so") {
    auto const bank = support::jon_boat();
    auto options = everything(bank);
    options.point->status = solver::Status::no_operating_point;
    CHECK(has(to_svg(bank, options), "no operating point"));
    CHECK(has(to_svg(bank), "wiring only"));
}

TEST_CASE("whatever a user writes comes out as text") {
    std::string const script = "<script>alert('x')</script>\"&]]>";
    std::string const turned = "a\u202eb\u200f";
    std::string const endless(10000, 'W');
    for (auto const& hostile : {script, turned, endless, std::string("--><!--"), std::string("\xff\x01\n\t")}) {
        auto bank = support::jon_boat();
        bank.name = hostile;
        bank.jumpers[0].conductor.id = hostile;
        bank.jumpers[0].conductor.color = hostile;
        bank.motors[0].id = hostile + "m";
        for (auto& run : bank.cables)
            for (auto* end : {&run.from, &run.to})
                if (end->rfind("troll", 0) == 0) *end = hostile + "m" + end->substr(5);
        auto options = everything(bank);
        options.findings.push_back({.rule = hostile, .message = hostile, .help = hostile, .parts = {hostile}});
        auto const svg = to_svg(bank, options);
        CHECK(is_nested(svg));
        CHECK_FALSE(has(svg, "<script"));
        CHECK_FALSE(has(svg, "\u202e"));
        CHECK_FALSE(has(svg, "\x01"));
        CHECK(has(svg, hostile == endless ? endless : std::string("Wiring diagram of")));
        auto const text = svg.find("<text");
        CHECK_FALSE(svg.find(std::string(200, 'W'), text) < svg.find("</text>", text)); // shortened where it is shown
    }
}

TEST_CASE("banks of any parts are drawn without a fault of the program") {
    for (unsigned seed = 0; seed < 40; ++seed) {
        auto const bank = test::AnyBank(seed).make();
        CHECK(is_nested(to_svg(bank)));
    }
    CHECK(is_nested(to_svg(Bank{})));
}

TEST_CASE("a bank too large to read is refused, and one just small enough is drawn") {
    Bank bank;
    for (std::size_t i = 0; i < drawing::most_parts / 2; ++i) {
        auto const n = std::to_string(i);
        bank.batteries.push_back(support::plain_battery("b" + n, 12.0, 1e-3));
        bank.jumpers.push_back(support::plain_run("j" + n, "b0+", "b" + n + "+", 1e-3));
    }
    CHECK(is_nested(to_svg(bank)));
    bank.loads.push_back(support::named<Load>("one-more"));
    CHECK_THROWS_AS(to_svg(bank), std::length_error);
}
