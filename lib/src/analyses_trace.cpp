// The bodies of analyses/trace/, built once. Written by tests/structure/make_umbrella.py.
#include "bankwright/analyses/trace/expected_readings_inl.hpp"
#include "bankwright/analyses/trace/faults_inl.hpp"
#include "bankwright/analyses/trace/suspects_inl.hpp"
#include "bankwright/analyses/trace/telling_reading_inl.hpp"
#include "bankwright/analyses/trace/updated_readings_inl.hpp"
