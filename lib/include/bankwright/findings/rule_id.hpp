// A rule's id is family/name: which family?
#pragma once

#include <string_view>

namespace bankwright {

constexpr std::string_view family(std::string_view rule_id) { return rule_id.substr(0, rule_id.find('/')); }

} // namespace bankwright
