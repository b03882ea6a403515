// How bad is a finding? SARIF's three words.
#pragma once

#include <string_view>

namespace bankwright {

enum class Level { note, warning, error }; // in rising order

constexpr std::string_view name(Level level) {
    switch (level) {
    case Level::error:
        return "error";
    case Level::warning:
        return "warning";
    case Level::note:
        return "note";
    }
    return "note";
}

} // namespace bankwright
