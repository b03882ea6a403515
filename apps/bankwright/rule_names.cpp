#include "rule_names.hpp"

#include "bankwright/rules/rule_names.hpp"

std::string unknown_rule(std::string const& id) { return bankwright::unknown_rule(id); }
