// A bank built in C++, without a file.
#include "second.hpp"

#include <cstdio>

int main() {
    using namespace bankwright;
    Bank bank;
    bank.system.voltage = 36.0 * si::volt;
    std::printf("bankwright %s: %.1f V\n", BANKWRIGHT_VERSION, volts_of(bank));
}
