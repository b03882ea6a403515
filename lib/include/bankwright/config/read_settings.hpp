// What does a folder ask of `check`? The text of its settings file, in the words of the command line.
#pragma once

#include "bankwright/config/read_limits.hpp"
#include "bankwright/findings/finding.hpp"
#include "bankwright/findings/level.hpp"
#include "bankwright/linkage.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace bankwright {

struct Settings {
    std::optional<Level> fail_on;
    std::optional<std::vector<std::string>> only; // rules or families
    std::optional<std::vector<std::string>> skip;
};

struct SettingsResult {
    Settings settings; // as far as they could be read: a key that cannot be read is as if it were not there
    Findings findings; // of the family file/*, in the order of the text
    bool readable = true;
};

// `choices` are the words that `only` and `skip` may hold: reading knows no rules (rules/rule_names.hpp lists them).
SettingsResult read_settings(std::string_view text, std::span<std::string_view const> choices,
                             ReadLimits const& limits = {});

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/config/read_settings_inl.hpp"
#endif
