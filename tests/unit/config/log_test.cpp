#include "bankwright/config/read_log.hpp"
#include "bankwright/config/write_log.hpp"
#include "bankwright/units/literals.hpp"
#include "support/findings_text.hpp"
#include "support/jon_boat.hpp"

#include <string>
#include <vector>

#include <doctest/doctest.h>

using namespace bankwright;
using namespace bankwright::literals;
using test::lines_of;
using Lines = std::vector<std::string>;

TEST_SUITE_BEGIN("config/log");

TEST_CASE("a log that was written is read again, word for word") {
    auto const bank = support::jon_boat();
    HookupLog log;
    log.name = "a name with \"quotes\" and \\";
    log.marks = part_marks(bank);
    log.of_reading = 0.008;
    log.digits = 1;
    log.resolution = 0.1 * si::volt;
    log.entries = {{LogWhen::alone, "A", {}, {}, Voltage(12.82_V), "2026-05-02 09:30"},
                   {LogWhen::run, "main", {}, {}, Resistance(0.3 * si::ohm), {}},
                   {LogWhen::before, "J1", {}, {}, NoPath{}, {}},
                   {LogWhen::done, "main", {}, {}, AsExpected{}, {}},
                   {LogWhen::also, {}, "A+", "B-", Voltage(-0.02_V), {}}};
    auto const text = write(log);
    auto const result = read_log(text, bank);
    CHECK(lines_of(result.findings) == Lines{});
    REQUIRE(result.log.entries.size() == log.entries.size());
    CHECK(result.regions.size() == log.entries.size());
    CHECK(write(result.log) == text);
    CHECK(result.log.name == log.name);
    CHECK(result.log.of_reading == doctest::Approx(0.008));
    CHECK(result.log.marks == log.marks);
}

TEST_CASE("a part that has changed, one that is new and one that is gone are told") {
    auto bank = support::jon_boat();
    auto const marks = part_marks(bank);
    CHECK(changed_since(marks, bank).empty());
    CHECK(changed_since({}, bank).empty()); // a log without marks
    bank.cables.front().conductor.length = 7.0 * si::meter;
    auto const changed = bank.cables.front().conductor.id;
    bank.batteries.back().id = "Z";
    bank.system.voltage = 24.0 * si::volt;
    CHECK(changed_since(marks, bank) == Lines{"[system]", "Z", changed, "C"});
}
