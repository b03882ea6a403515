// A file that includes what it uses, not the whole library.
#include "second.hpp"

#include "bankwright/analyses/operating_point.hpp"

double volts_at_motor(bankwright::Bank const& bank) {
    return reading_of(operating_point(bank), "troll").voltage.value();
}
