// The compiled twin of the short-circuit analysis, and of the bank as a source.
#include "bankwright/analyses/fault_places_inl.hpp"
#include "bankwright/analyses/fault_course_inl.hpp"
#include "bankwright/analyses/short_circuit_inl.hpp"
#include "bankwright/analyses/seen_from_inl.hpp"
