// The bodies of wiring/, built once. Written by tests/structure/make_umbrella.py.
#include "bankwright/wiring/arrangement_inl.hpp"
#include "bankwright/wiring/places_inl.hpp"
#include "bankwright/wiring/unprotected_path_inl.hpp"
#include "bankwright/wiring/wiring_graph_inl.hpp"
#include "bankwright/wiring/wiring_loop_inl.hpp"
#include "bankwright/wiring/wiring_regions_inl.hpp"
#include "bankwright/wiring/wiring_repair_inl.hpp"
#include "bankwright/wiring/wiring_verdict_inl.hpp"
