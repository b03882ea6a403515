#include "second.hpp"

double volts_at_motor(bankwright::Bank const& bank) {
    return reading_of(operating_point(bank), "troll").voltage.value();
}
