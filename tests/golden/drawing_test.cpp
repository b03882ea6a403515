// What did the drawings look like yesterday?
#include "bankwright/drawing/svg.hpp"
#include "golden/golden_file.hpp"
#include "support/jon_boat.hpp"

#include <doctest/doctest.h>

using namespace bankwright;
using golden::check_golden;

namespace {

drawing::DrawOptions with_readings(Bank const& bank) {
    drawing::DrawOptions options;
    options.point = operating_point(bank);
    return options;
}

} // namespace

TEST_CASE("the drawing of a good bank looks as it did") {
    auto const bank = support::jon_boat();
    auto options = with_readings(bank);
    options.arrangement = "3S1P";
    check_golden("jon_boat.svg", drawing::to_svg(bank, options));
}

TEST_CASE("the drawing of a bank with a fault loop looks as it did") {
    auto bank = support::jon_boat();
    bank.jumpers.push_back(support::plain_run("wrong", "B+", "A-", 1e-3));
    Finding finding;
    finding.rule = "wiring/shorted-loop";
    finding.message = "`wrong` (`B+` to `A-`) closes a loop that adds up to 25.4 V";
    finding.help = "take `wrong` off";
    finding.parts = {"wrong", "A", "J1", "B"};
    auto options = with_readings(bank);
    options.findings = {finding};
    check_golden("jon_boat_shorted.svg", drawing::to_svg(bank, options));
}
