// A bank as TOML: canonical, or with models and comments.
#pragma once

#include "bankwright/config/fields.hpp"
#include "bankwright/config/write.hpp"
#include "bankwright/config/writer/key_writer.hpp"
#include "bankwright/config/writer/models.hpp"

#include <string>
#include <string_view>

#include <fmt/format.h>

namespace bankwright {

namespace internal::writing {

inline std::string acceptances(Bank const& bank) {
    std::string text;
    for (auto const& acceptance : bank.accepted) {
        KeyWriter keys(accept_section);
        keys("rule", acceptance.rule);
        if (!acceptance.part.empty()) keys("part", acceptance.part);
        if (!acceptance.reason.empty()) keys("reason", acceptance.reason);
        text += fmt::format("\n[[{}]]\n{}", accept_section.name, keys.lines());
    }
    return text;
}

} // namespace internal::writing

BANKWRIGHT_INLINE std::string write(Bank const& bank) {
    using namespace internal::writing;
    std::string text = fmt::format("bankwright = {}\n", format_version);
    if (!bank.name.empty()) text += fmt::format("name = {}\n", toml_string(bank.name));

    KeyWriter system(system_section, bank.tolerances, {});
    for_each_field(bank.system, system);
    text += fmt::format("\n[{}]\n{}", system_section.name, system.lines());

    std::string_view open_section;
    for_each_part(bank, [&](PartKind kind, auto const& part) {
        if (open_section != section(kind)) text += fmt::format("\n[{}]\n", section(kind));
        open_section = section(kind);
        KeyWriter keys(section_spec(kind), bank.tolerances, id_of(part));
        for_each_field(part, keys);
        text += fmt::format("{} = {}\n", key_of(id_of(part)), keys.inline_table());
    });

    return text + internal::writing::acceptances(bank);
}

BANKWRIGHT_INLINE std::string write(Bank const& bank, WriteNotes const& notes) {
    using namespace internal::writing;
    auto const comment = [](std::vector<std::string> const& lines) {
        std::string text;
        for (auto const& line : lines)
            text += "# " + line + "\n";
        return text;
    };
    auto const under = [&](std::string_view name) {
        auto const found = notes.sections.find(std::string(name));
        return found == notes.sections.end() ? std::string() : comment(found->second);
    };
    auto text = comment(notes.head) + fmt::format("bankwright = {}\n", format_version);
    if (!bank.name.empty()) text += fmt::format("name = {}\n", toml_string(bank.name));
    KeyWriter system(system_section, bank.tolerances, {});
    for_each_field(bank.system, system);
    text += fmt::format("\n[{}]\n{}{}", system_section.name, under(system_section.name), system.lines());

    Modeled const modeled(bank);
    if (!modeled.models().empty()) text += fmt::format("\n[{}]\n{}", models_section, under(models_section));
    for (auto const& [name, keys] : modeled.models())
        text += fmt::format("{} = {{ {} }}\n", key_of(name), fmt::join(keys, ", "));

    std::string_view open_section;
    for_each_part(bank, [&](PartKind kind, auto const& part) {
        if (open_section != section(kind)) text += fmt::format("\n[{}]\n{}", section(kind), under(section(kind)));
        open_section = section(kind);
        auto const note = notes.parts.find(id_of(part));
        text += fmt::format("{} = {}{}\n", key_of(id_of(part)), modeled.table(id_of(part)),
                            note == notes.parts.end() ? "" : " # " + note->second);
    });
    return text + acceptances(bank);
}

} // namespace bankwright
