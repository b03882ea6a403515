// Placing and routing hold for every bank, however it is wired.
#include "bankwright/bank/terminals.hpp"
#include "bankwright/config/read.hpp"
#include "bankwright/drawing/layout/lay_out.hpp"
#include "miswires/good_banks.hpp"
#include "miswires/single_miswires.hpp"
#include "support/any_bank.hpp"
#include "support/drawing_faults.hpp"
#include "support/jon_boat.hpp"
#include "support/random_bank.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>

#include <doctest/doctest.h>

using namespace bankwright;
using support::faults_of;

namespace {

std::vector<Bank> examples() {
    std::vector<std::filesystem::path> files;
    for (auto const& entry : std::filesystem::directory_iterator(BANKWRIGHT_SOURCE_DIR "/data/examples"))
        if (entry.path().extension() == ".toml") files.push_back(entry.path());
    std::sort(files.begin(), files.end());
    std::vector<Bank> banks;
    for (auto const& file : files) {
        std::ifstream stream(file);
        banks.push_back(read(std::string(std::istreambuf_iterator<char>(stream), {})).bank);
    }
    REQUIRE(banks.size() >= 10);
    return banks;
}

// Examples, good banks of every shape, and random ones, good and weird.
std::vector<Bank> many_banks() {
    auto banks = examples();
    for (auto const& shape : miswires::all_shapes())
        banks.push_back(miswires::BankBuilder(shape).build());
    for (std::uint64_t seed = 0; seed < 150; ++seed) {
        banks.push_back(support::random_good_bank(seed));
        banks.push_back(support::random_weird_bank(seed));
    }
    return banks;
}

void check_drawing(Bank const& bank) {
    auto const faults = faults_of(bank, drawing::lay_out(bank));
    CAPTURE(bank.name);
    for (auto const& fault : faults) {
        CAPTURE(fault);
        CHECK(fault.empty());
    }
}

drawing::Box box_of(drawing::Drawing const& drawing, std::string const& id) {
    for (auto const& part : drawing.parts)
        if (part.id == id) return part.box;
    FAIL("there is no part " << id);
    return {};
}

} // namespace

TEST_CASE("no bank is drawn with overlapping parts, with conductors through parts or on top of each other") {
    for (auto const& bank : many_banks())
        check_drawing(bank);
}

TEST_CASE("every single miswire of some banks is drawn as soundly") {
    for (auto const& shape : {miswires::Shape{3, 1, miswires::MainLeads::end, true, false},
                              miswires::Shape{2, 2, miswires::MainLeads::cross_tied, false, true},
                              miswires::Shape{1, 3, miswires::MainLeads::star, true, false}}) {
        auto const good = miswires::BankBuilder(shape).build();
        auto const all = miswires::MiswireMaker(good).all();
        for (std::size_t i = 0; i < all.size(); i += 7)
            check_drawing(miswires::with(good, all[i]));
    }
}

TEST_CASE("banks of any parts joined anyhow are drawn soundly") {
    for (unsigned seed = 0; seed < 60; ++seed)
        check_drawing(test::AnyBank(seed).make());
}

TEST_CASE("a bank of nothing, or of loads alone, is drawn too") {
    check_drawing({});
    Bank bank;
    bank.motors = {support::named<Motor>("m"), support::named<Motor>("n")};
    bank.cables = {support::plain_run("w", "m+", "n-", 0.1), support::plain_run("x", "m+", "m-", 0.1),
                   support::plain_run("y", "m+", "m+", 0.1), support::plain_run("z", "m+", "nowhere", 0.1)};
    check_drawing(bank);
    CHECK(drawing::lay_out(bank).undrawn == std::vector<std::string>{"z"});
}

TEST_CASE("one more load moves no battery") {
    for (auto const& bank : many_banks()) {
        auto const before = drawing::lay_out(bank);
        auto more = bank;
        Load lamp;
        lamp.id = "one-more";
        lamp.current = 1.0 * si::ampere;
        more.loads.push_back(lamp);
        auto fuse = support::named<ProtectiveDevice>("one-more-fuse");
        fuse.rating = 5.0 * si::ampere;
        more.fuses.push_back(fuse);
        auto const posts = bank.batteries.empty() ? std::string() : bank.batteries.front().id;
        if (posts.empty()) continue;
        more.cables.push_back(support::plain_run("one-more-f", posts + "+", "one-more-fuse.line", 0.1));
        more.cables.push_back(support::plain_run("one-more-p", "one-more-fuse.load", "one-more+", 0.1));
        more.cables.push_back(support::plain_run("one-more-n", "one-more-", posts + "-", 0.1));
        auto const after = drawing::lay_out(more);
        for (auto const& battery : bank.batteries) {
            auto const was = box_of(before, battery.id), is = box_of(after, battery.id);
            CAPTURE(bank.name);
            CAPTURE(battery.id);
            CAPTURE(was.x);
            CAPTURE(is.x);
            CAPTURE(was.y);
            CHECK(was.x == is.x);
            CHECK(was.y == is.y);
        }
    }
}

TEST_CASE("series runs left to right, parallel strings are stacked, and what a screen does not hold goes on below") {
    auto const bank = miswires::BankBuilder({3, 2, miswires::MainLeads::diagonal, false, false}).build();
    auto const drawing = drawing::lay_out(bank);
    CHECK(box_of(drawing, "A1").y == box_of(drawing, "A3").y);
    CHECK(box_of(drawing, "A1").right() < box_of(drawing, "A2").x);
    CHECK(box_of(drawing, "A2").right() < box_of(drawing, "A3").x);
    CHECK(box_of(drawing, "A1").x == box_of(drawing, "B1").x);
    CHECK(box_of(drawing, "A1").bottom() < box_of(drawing, "B1").y);
    CHECK(box_of(drawing, "A3").right() < box_of(drawing, "CB").x);
    CHECK(box_of(drawing, "CB").bottom() < box_of(drawing, "bow").y);
    CHECK(box_of(drawing, "bow").bottom() < box_of(drawing, "troll").y);
    auto const single = drawing::lay_out(miswires::BankBuilder({1, 1}).build());
    CHECK(box_of(single, "CB").right() < box_of(single, "bow").x);
    CHECK(box_of(single, "bow").right() < box_of(single, "troll").x);
}

TEST_CASE("a string of sixteen goes back and forth, its jumpers short") {
    auto const drawing = drawing::lay_out(miswires::BankBuilder({16, 1}).build());
    CHECK(box_of(drawing, "A4").x == box_of(drawing, "A5").x);
    CHECK(box_of(drawing, "A4").bottom() < box_of(drawing, "A5").y);
    CHECK(box_of(drawing, "A8").x == box_of(drawing, "A1").x);
    CHECK(drawing.width < 1290.0);
}

TEST_CASE("a missing jumper leaves the batteries where they were") {
    auto const whole = support::jon_boat();
    auto broken = whole;
    broken.jumpers.pop_back();
    auto const before = drawing::lay_out(whole), after = drawing::lay_out(broken);
    for (auto const* id : {"A", "B", "C"}) {
        CHECK(box_of(before, id).x == box_of(after, id).x);
        CHECK(box_of(before, id).y == box_of(after, id).y);
    }
}

TEST_CASE("a battery that lies the wrong way around is drawn the wrong way around") {
    auto bank = support::jon_boat();
    bank.jumpers[0].to = "B+";
    bank.jumpers[1].from = "B-";
    auto const drawing = drawing::lay_out(bank);
    CHECK_FALSE(drawing.parts[0].turned);
    CHECK(drawing.parts[1].turned);
    CHECK_FALSE(drawing.parts[2].turned);
    CHECK(box_of(drawing, "A").right() < box_of(drawing, "B").x);
    CHECK(box_of(drawing, "B").right() < box_of(drawing, "C").x);
}

TEST_CASE("the fault loop is told, and nothing else of the bank") {
    auto bank = support::jon_boat();
    bank.jumpers.push_back(support::plain_run("wrong", "B+", "A-", 1e-3));
    auto const drawing = drawing::lay_out(bank);
    std::vector<std::string> looped;
    for (auto const& part : drawing.parts)
        if (part.in_fault_loop) looped.push_back(part.id);
    for (auto const& wire : drawing.wires)
        if (wire.in_fault_loop) looped.push_back(wire.id);
    CHECK(looped == std::vector<std::string>{"A", "B", "J1", "wrong"});
    for (auto const& part : drawing::lay_out(support::jon_boat()).parts)
        CHECK_FALSE(part.in_fault_loop);
}

TEST_CASE("conductors are positive, negative or between batteries by where they are") {
    std::string sides;
    for (auto const& wire : drawing::lay_out(support::jon_boat()).wires)
        sides += wire.side == drawing::WireSide::positive ? '+' : wire.side == drawing::WireSide::negative ? '-' : '/';
    CHECK(sides == "//++-+-"); // J1 J2, feed main return tail-p tail-n
}
