#include "second.hpp"

double volts_of(bankwright::Bank const& bank) { return bank.system.voltage->value(); }
