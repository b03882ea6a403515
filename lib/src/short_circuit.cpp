// The compiled twin of the short-circuit analysis.
#include "bankwright/analyses/fault_places_inl.hpp"
#include "bankwright/analyses/fault_course_inl.hpp"
#include "bankwright/analyses/short_circuit_inl.hpp"
