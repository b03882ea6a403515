// The bodies of analyses/short_circuit/, built once. Written by tests/structure/make_umbrella.py.
#include "bankwright/analyses/short_circuit/short_course_inl.hpp"
#include "bankwright/analyses/short_circuit/short_places_inl.hpp"
#include "bankwright/analyses/short_circuit/shorted_network_inl.hpp"
