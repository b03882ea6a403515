// What did the reports look like yesterday?
#include "bankwright/page/html/style_sheet.hpp"
#include "bankwright/page/to_html.hpp"
#include "bankwright/rules/catalog.hpp"
#include "bankwright/rules/check.hpp"
#include "golden/golden_file.hpp"
#include "support/jon_boat.hpp"

#include <doctest/doctest.h>

using namespace bankwright;
using golden::check_golden;

namespace {

std::string report(Bank const& bank) {
    auto checked = check(bank);
    Verdict verdict{"boat.toml", {}, checked.arrangement, std::move(checked.findings)};
    auto html = page::to_html(page::report_on(bank, std::move(verdict), all_rules()));
    auto const style = html.find(page::style_sheet); // how it looks is for eyes and tests/pictures
    REQUIRE(style != std::string::npos);
    return html.replace(style, page::style_sheet.size(), "STYLE");
}

} // namespace

TEST_CASE("the report of a good bank looks as it did") {
    auto bank = support::jon_boat();
    for (auto& battery : bank.batteries) {
        battery.chemistry = Chemistry::agm;
        battery.capacity = 100.0 * 3600.0 * si::coulomb;
    }
    for (auto& cable : bank.cables) // so that no more than 3 % is lost
        cable.conductor.resistance = 1e-3 * si::ohm;
    bank.breakers.front().interrupts = 5000.0 * si::ampere;
    bank.breakers.front().voltage = 48.0 * si::volt;
    auto const html = report(bank);
    CHECK(html.find("Nothing wrong found") != std::string::npos);
    check_golden("jon_boat.html", html);
}

TEST_CASE("the report of a bank with a turned battery looks as it did") {
    auto bank = support::jon_boat();
    bank.jumpers = {support::plain_run("J1", "A+", "B+", 1e-3), support::plain_run("J2", "B-", "C-", 1e-3)};
    auto const html = report(bank);
    CHECK(html.find("Stop: 1 error") != std::string::npos);
    check_golden("jon_boat_turned.html", html);
}
