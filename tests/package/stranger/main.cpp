// A bank built in C++, without a file: is anything wrong, and what will the motor see?
#include "bankwright/bankwright.hpp"
#include "second.hpp"

#include <cmath>
#include <cstdio>

using namespace bankwright;
using namespace bankwright::literals;

Bank two_in_series() {
    Bank bank;
    bank.system = {.voltage = 24_V, .joint = 0.1_mohm};
    bank.batteries = {{.id = "A", .chemistry = Chemistry::agm, .voltage = 12_V, .capacity = 100_Ah},
                      {.id = "B", .chemistry = Chemistry::agm, .voltage = 12_V, .capacity = 100_Ah}};
    bank.jumpers = {{{.id = "J1", .size = 6_AWG, .length = 12_in}, "A+", "B-"}};
    bank.cables = {{{.id = "feed", .size = 6_AWG, .length = 5_in}, "B+", "CB.line"},
                   {{.id = "main", .size = 6_AWG, .length = 12_ft}, "CB.load", "troll+"},
                   {{.id = "return", .size = 6_AWG, .length = 12_ft}, "troll-", "A-"}};
    bank.breakers = {{.id = "CB", .rating = 60_A, .interrupts = 5_kA, .voltage = 48_V}};
    bank.motors = {{.id = "troll", .voltage = 24_V, .current = 50_A}};
    return bank;
}

int main() {
    auto const bank = two_in_series();
    for (auto const& finding : check(bank).findings)
        std::printf("%s: %s\n", finding.rule.c_str(), finding.message.c_str());
    auto const motor = reading_of(operating_point(bank), "troll");
    std::printf("the motor sees %s and draws %s\n", print(motor.voltage).c_str(), print(motor.current).c_str());
    return std::abs(volts_at_motor(bank) - motor.voltage.value()) < 1e-12 ? 0 : 1;
}
