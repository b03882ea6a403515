#include "bankwright/units/parse_inl.hpp"
#include "bankwright/units/parse_wire_size_inl.hpp"
#include "bankwright/units/print_inl.hpp"
