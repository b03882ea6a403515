// The compiled twin of config/. The only file that sees toml++.
#include "bankwright/config/document_inl.hpp"
#include "bankwright/config/json_schema_inl.hpp"
#include "bankwright/config/key_reference_inl.hpp"
#include "bankwright/config/read_duty_inl.hpp"
#include "bankwright/config/read_inl.hpp"
#include "bankwright/config/read_readings_inl.hpp"
#include "bankwright/config/text_check_inl.hpp"
#include "bankwright/config/write_inl.hpp"
