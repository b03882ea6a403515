#include "bankwright/rules/matching_inl.hpp"
#include "bankwright/rules/run_inl.hpp"
#include "bankwright/rules/solving_inl.hpp"
#include "bankwright/rules/wiring_inl.hpp"
