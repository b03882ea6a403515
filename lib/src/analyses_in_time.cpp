// The bodies of analyses/in_time/, built once. Written by tests/structure/make_umbrella.py.
#include "bankwright/analyses/in_time/bank_in_time_inl.hpp"
#include "bankwright/analyses/in_time/charge_course_inl.hpp"
#include "bankwright/analyses/in_time/charge_rates_inl.hpp"
