// The five families of battery that a small boat carries.
#pragma once

#include <array>
#include <optional>
#include <string_view>

namespace bankwright {

enum class Chemistry { flooded, agm, gel, lifepo4, nmc };

inline constexpr std::array<std::string_view, 5> chemistry_names{"flooded", "agm", "gel", "lifepo4", "nmc"};

constexpr std::string_view name(Chemistry chemistry) { return chemistry_names[static_cast<std::size_t>(chemistry)]; }

// As it stands on a label; a file has it in lower case.
inline constexpr std::array<std::string_view, 5> chemistry_labels{"flooded", "AGM", "gel", "LiFePO4", "NMC"};

constexpr std::string_view label_name(Chemistry chemistry) {
    return chemistry_labels[static_cast<std::size_t>(chemistry)];
}

constexpr std::optional<Chemistry> chemistry_named(std::string_view text) {
    for (std::size_t i = 0; i < chemistry_names.size(); ++i)
        if (chemistry_names[i] == text) return static_cast<Chemistry>(i);
    return std::nullopt;
}

constexpr bool is_lithium(Chemistry chemistry) {
    return chemistry == Chemistry::lifepo4 || chemistry == Chemistry::nmc;
}

} // namespace bankwright
