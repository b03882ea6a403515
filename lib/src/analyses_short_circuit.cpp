// The bodies of analyses/short_circuit/, built once. Written by tests/structure/make_umbrella.py.
#include "bankwright/analyses/short_circuit/fault_course_inl.hpp"
#include "bankwright/analyses/short_circuit/fault_places_inl.hpp"
