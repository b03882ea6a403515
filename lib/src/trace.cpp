// The compiled twin of tracing and what it is made of.
#include "bankwright/analyses/expected_readings_inl.hpp"
#include "bankwright/analyses/faults_inl.hpp"
#include "bankwright/analyses/suspects_inl.hpp"
#include "bankwright/analyses/telling_reading_inl.hpp"
#include "bankwright/analyses/trace_inl.hpp"
#include "bankwright/analyses/updated_readings_inl.hpp"
