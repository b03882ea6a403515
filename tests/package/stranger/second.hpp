#pragma once

#include "bankwright/bank/bank.hpp"

// [V] at the motor, solved in another file than main's.
double volts_at_motor(bankwright::Bank const& bank);
