// What the reports of the commands that carry a bank through time are told of it.
#pragma once

#include "reading.hpp"

#include "bankwright/reports/through_time.hpp"

#include <string>

bankwright::ThroughTime through_time(std::string const& file, Reading const& reading);
