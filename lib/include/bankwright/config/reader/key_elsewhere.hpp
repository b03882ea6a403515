// A key that has no meaning where it stands: where does it have one?
#pragma once

#include "bankwright/config/keys.hpp"
#include "bankwright/config/reader/read_value.hpp"
#include "bankwright/config/schema/key_words.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <fmt/format.h>

namespace bankwright::internal::reader {

// "`name` stands at the top of the file, above the first section"; none where no key is called so.
inline std::optional<std::string> key_elsewhere(std::string_view key, SectionSpec const& here) {
    if (here.keys.data() != root_section.keys.data() && find_key(root_section, key))
        return fmt::format("{} stands at the top of the file, above the first section", in_backquotes(key));
    if (here.keys.data() != system_section.keys.data() && find_key(system_section, key))
        return fmt::format("{} stands in `[system]`", in_backquotes(key));
    std::vector<std::string_view> sections;
    for (auto const& section : part_sections)
        if (find_key(section, key)) sections.push_back(section.name);
    constexpr std::size_t too_many = 3; // such a key says nothing of what was meant
    if (sections.empty() || sections.size() > too_many) return std::nullopt;
    return fmt::format("{} is a key of {}", in_backquotes(key), listed(sections, " and "));
}

} // namespace bankwright::internal::reader
