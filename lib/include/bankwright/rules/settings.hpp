// What does a folder ask of `check`? Its settings file, held against the rules there are.
#pragma once

#include "bankwright/config/read_limits.hpp"
#include "bankwright/config/read_settings.hpp"
#include "bankwright/linkage.hpp"

#include <string_view>

namespace bankwright {

SettingsResult read_settings(std::string_view text, ReadLimits const& limits = {});

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/rules/settings_inl.hpp"
#endif
