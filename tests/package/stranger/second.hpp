#pragma once

#include "bankwright/bankwright.hpp"

double volts_of(bankwright::Bank const& bank);
