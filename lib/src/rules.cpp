// The bodies of rules/, built once. Written by tests/structure/make_umbrella.py.
#include "bankwright/rules/check_inl.hpp"
#include "bankwright/rules/inspect_inl.hpp"
#include "bankwright/rules/rule_shares_inl.hpp"
#include "bankwright/rules/settings_inl.hpp"
#include "bankwright/rules/solving_inl.hpp"
