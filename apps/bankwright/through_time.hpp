// What the reports of the commands that carry a bank through time are told of it.
#pragma once

#include "bankwright/reports/through_time.hpp"
#include "reading.hpp"

#include <string>

bankwright::ThroughTime through_time(std::string const& file, Reading const& reading);
