// What do the motors and loads do meanwhile? --current, --throttle and --rest, and the same in words.
#pragma once

#include "bankwright/network/moment.hpp"
#include "option.hpp"

#include <vector>

// --current and --throttle, which exclude each other.
void add_current_and_throttle(std::vector<Option>& options, bankwright::Moment& moment);

// Of these and --rest, one.
void add_moment(std::vector<Option>& options, bankwright::Moment& moment);
