// The bodies of solver/lanes/, built once. Written by tests/structure/make_umbrella.py.
#include "bankwright/solver/lanes/lane_kernels_inl.hpp"
#include "bankwright/solver/lanes/lane_program_inl.hpp"
#include "bankwright/solver/lanes/lane_random_inl.hpp"
#include "bankwright/solver/lanes/lane_transpose_inl.hpp"
#include "bankwright/solver/lanes/port_lanes_inl.hpp"
