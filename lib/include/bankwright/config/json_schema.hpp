// What may a bank file hold, said as a JSON Schema: for editors that complete and check while one types.
#pragma once

#include "bankwright/linkage.hpp"

#include <string>

namespace bankwright {

// JSON Schema draft-07 of a bank file, made from the table of keys: sections, keys, units, choices, what a part needs.
// A date is a string of format "date". It cannot say all that read() checks: ranges of quantities, terminals, names
// that repeat.
std::string json_schema();

// The same of a file of readings (config/read_readings.hpp).
std::string readings_json_schema();

// The same of the log of a hook-up (config/read_log.hpp).
std::string log_json_schema();

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/config/json_schema_inl.hpp"
#endif
