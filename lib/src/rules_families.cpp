// The bodies of rules/families/, built once. Written by tests/structure/make_umbrella.py.
#include "bankwright/rules/families/charging_inl.hpp"
#include "bankwright/rules/families/conductor_inl.hpp"
#include "bankwright/rules/families/connection_inl.hpp"
#include "bankwright/rules/families/load_inl.hpp"
#include "bankwright/rules/families/matching_inl.hpp"
#include "bankwright/rules/families/protection_inl.hpp"
#include "bankwright/rules/families/sharing_inl.hpp"
#include "bankwright/rules/families/wiring_inl.hpp"
