// What does a folder ask of `check`? Its settings file, held against the rules there are.
#pragma once

#include "bankwright/config/read_limits.hpp"
#include "bankwright/config/read_settings.hpp"
#include "bankwright/rules/rule_names.hpp"

#include <string_view>

namespace bankwright {

inline SettingsResult read_settings(std::string_view text, ReadLimits const& limits = {}) {
    auto const choices = rule_and_family_names();
    return read_settings(text, choices, limits);
}

} // namespace bankwright
