#include "bankwright/page/bank_report.hpp"
#include "bankwright/page/to_html.hpp"
#include "bankwright/rules/catalog.hpp"
#include "bankwright/rules/check.hpp"
#include "bankwright/units/literals.hpp"
#include "support/jon_boat.hpp"

#include <doctest/doctest.h>

using namespace bankwright;
using namespace bankwright::literals;

namespace {

page::BankReport asked(Bank const& bank, page::ReportOptions const& options = {}) {
    auto checked = check(bank);
    return page::report_on(bank, Verdict{"boat.toml", {}, checked.arrangement, std::move(checked.findings)},
                           all_rules(), options);
}

Bank with_capacity() {
    auto bank = support::jon_boat();
    for (auto& battery : bank.batteries) {
        battery.chemistry = Chemistry::agm;
        battery.capacity = 100_Ah;
    }
    return bank;
}

bool contains(std::string const& text, std::string const& part) { return text.find(part) != std::string::npos; }

} // namespace

TEST_CASE("every analysis says in the report what it says alone") {
    auto const bank = with_capacity();
    auto const report = asked(bank);
    REQUIRE(report.run);
    CHECK(report.run->runtime == discharge(bank).runtime);
    CHECK(report.point.parts.size() == operating_point(bank).parts.size());
    REQUIRE(report.shorts);
    CHECK(report.shorts->places.size() == short_circuit(bank).places.size());
    REQUIRE(report.hookup);
    CHECK(report.hookup->steps.size() == hookup(bank).steps.size());
    CHECK(report.strings == std::vector<std::vector<std::string>>{{"A", "B", "C"}});
}

TEST_CASE("nobody is told how to put together, to run or to cut for a bank that is wired wrongly") {
    auto bank = with_capacity();
    bank.jumpers = {support::plain_run("J1", "A+", "B+", 1e-3), support::plain_run("J2", "B-", "C-", 1e-3)};
    auto const report = asked(bank);
    CHECK_FALSE(report.run);
    CHECK_FALSE(report.hookup);
    auto const html = page::to_html(report);
    CHECK(contains(html, "Not listed: correct the wiring first."));
    CHECK(contains(html, "No hook-up yet"));
}

TEST_CASE("an accepted error stands in nobody's way and is shown with its reason") {
    auto const bank = with_capacity();
    Finding finding;
    finding.rule = "protection/too-far";
    finding.message = "`CB` is 9 in from `C+`";
    finding.parts = {"feed"};
    finding.accepted = true;
    finding.accepted_because = "in loom <all> the way";
    auto const report = page::report_on(bank, Verdict{"boat.toml", {}, "3S1P", {finding}}, all_rules());
    CHECK(report.hookup);
    auto const html = page::to_html(report);
    CHECK(contains(html, "Nothing wrong found"));
    CHECK(contains(html, "Accepted error"));
    CHECK(contains(html, "in loom &lt;all&gt; the way"));
}

TEST_CASE("without a capacity there is no run, and the report says of which battery") {
    auto const report = asked(support::jon_boat());
    CHECK_FALSE(report.run);
    CHECK(contains(report.no_run, "`A`"));
}

TEST_CASE("what would fill no page is left out of a very large bank's report") {
    auto bank = with_capacity();
    for (int i = 0; i < 300; ++i)
        bank.busbars.push_back(support::named<Busbar>("bar" + std::to_string(i)));
    Verdict const sound{"boat.toml", {}, "3S1P", {}};
    auto const large = page::report_on(bank, sound, all_rules());
    CHECK(large.run);
    CHECK(large.shorts);
    CHECK_FALSE(large.hookup);
    for (int i = 300; i < 700; ++i)
        bank.busbars.push_back(support::named<Busbar>("bar" + std::to_string(i)));
    auto const larger = page::report_on(bank, sound, all_rules());
    CHECK_FALSE(larger.run);
    CHECK_FALSE(larger.shorts);
    auto const html = page::to_html(larger);
    CHECK(contains(html, "<bdi class=\"name\">short-circuit</bdi>"));
    CHECK(contains(html, "are too many to draw"));
}

TEST_CASE("at rest nothing is shared and nothing runs") {
    page::ReportOptions options;
    options.moment.loads = LoadsAre::at_rest;
    options.moment_in_words = "with every load off";
    auto const html = page::to_html(asked(with_capacity(), options));
    CHECK(contains(html, "No battery gives or takes any current with every load off."));
    CHECK(contains(html, "Nothing draws any current."));
}

TEST_CASE("a bank of nothing has a report too") {
    auto const html = page::to_html(asked(Bank{}));
    CHECK(contains(html, "<h1>Battery bank</h1>"));
    CHECK(contains(html, "0 batteries"));
}

TEST_CASE("a bank with a charger says how long it charges from empty and from the charge in the file") {
    auto bank = with_capacity();
    Charger charger;
    charger.id = "shore";
    charger.voltage = 43.2_V;
    charger.current = 20_A;
    bank.chargers.push_back(charger);
    bank.cables.push_back(support::plain_run("charge-p", "C+", "shore.1+", 1e-3));
    bank.cables.push_back(support::plain_run("charge-n", "shore.1-", "A-", 1e-3));
    Verdict const sound{"boat.toml", {}, "3S1P", {}};
    auto const report = page::report_on(bank, sound, all_rules());
    REQUIRE(report.charge_from_empty);
    RechargeOptions empty;
    empty.charge = StateOfCharge::of(0.0);
    CHECK(report.charge_from_empty->duration == recharge(bank, empty).duration);
    REQUIRE(report.charge_as_described);
    CHECK(report.charge_as_described->duration == recharge(bank).duration);
    CHECK(contains(page::to_html(report), "How long it charges"));

    Finding finding;
    finding.rule = "protection/missing";
    finding.level = Level::error;
    auto const faulty = page::report_on(bank, {"boat.toml", {}, "3S1P", {finding}}, all_rules());
    CHECK_FALSE(faulty.charge_from_empty);
    CHECK(contains(page::to_html(faulty), "Not worked out: correct the errors above first."));
    CHECK_FALSE(contains(page::to_html(asked(with_capacity())), "How long it charges"));
}
