// The bodies of units/, built once. Written by tests/structure/make_umbrella.py.
#include "bankwright/units/dimensions_inl.hpp"
#include "bankwright/units/parse_inl.hpp"
#include "bankwright/units/price_inl.hpp"
#include "bankwright/units/print_inl.hpp"
#include "bankwright/units/unit_spelling_inl.hpp"
