// Body of settings.hpp.
#pragma once

#include "bankwright/rules/rule_names.hpp"
#include "bankwright/rules/settings.hpp"

namespace bankwright {

BANKWRIGHT_INLINE SettingsResult read_settings(std::string_view text, ReadLimits const& limits) {
    auto const choices = rule_and_family_names();
    return read_settings(text, choices, limits);
}

} // namespace bankwright
