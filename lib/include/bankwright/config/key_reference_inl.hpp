// The table of keys as Markdown.
#pragma once

#include "bankwright/config/key_reference.hpp"
#include "bankwright/config/keys.hpp"
#include "bankwright/config/log_keys.hpp"
#include "bankwright/config/read_limits.hpp"
#include "bankwright/config/reading_keys.hpp"
#include "bankwright/config/schema/key_words.hpp"

#include <string>

#include <fmt/format.h>

namespace bankwright {
namespace internal::reference {

inline std::string row(KeySpec const& key) {
    auto const allowed = internal::key_words::allowed(key);
    return fmt::format("| `{}` | {} | `{}` | {} | {} |\n", key.name, allowed.empty() ? with_article(key.kind) : allowed,
                       key.example, key.if_absent, key.meaning);
}

inline std::string section(SectionSpec const& section, std::string_view title) {
    auto text = fmt::format("## {}\n\n{}\n\n", title, section.meaning);
    if (section.kind)
        text += section.terminals.empty() ? "Terminals of its own: none.\n\n"
                                          : fmt::format("Terminals of a part `X`: `{}`.\n\n", section.terminals);
    for (auto const& requirement : section.requirements)
        text += fmt::format("Needs {}{}.\n\n", requirement.exactly_one ? "exactly one of " : "",
                            internal::key_words::in_words(internal::key_words::alternatives_of(requirement)));
    text += "| key | allowed | example | if absent | meaning |\n|---|---|---|---|---|\n";
    for (auto const& key : section.keys)
        text += row(key);
    return text + "\n";
}

} // namespace internal::reference

BANKWRIGHT_INLINE std::string key_reference() {
    std::string text =
        "# The keys of a bank file\n\n"
        "A bank file is TOML 1.0, one bank a file. Quantities are text with a unit: `\"36 V\"`, `\"4.2 mohm\"`, "
        "`\"17 ft\"`, `\"6 AWG\"`, `\"90 %\"`. A part's name is letters, digits, `_` and inner `-`, and stands for one "
        "part in the whole file.\n\n";
    text += internal::reference::section(root_section, "At the top");
    text += internal::reference::section(system_section, "`[system]`");
    text += fmt::format(
        "## `[{}]`\n\nNamed sets of any part's keys. A part that says `model = \"name\"` has these keys too, and its "
        "own win. A model cannot build on another.\n\n",
        models_section);
    for (auto const& section : part_sections)
        text += internal::reference::section(section, fmt::format("`[{}]`", section.name));
    text += internal::reference::section(accept_section, fmt::format("`[[{}]]`", accept_section.name));
    text += fmt::format(
        "# A part list\n\n"
        "A file of models that several banks share: these keys, then `[{}]` as in a bank file. Bank files name "
        "it in `parts`, by its path from their own folder; it must lie inside the folder given to the "
        "command, or below the current one where files are given, and not behind a link. A name stands for "
        "one model over a bank file and all its lists.\n\n",
        models_section);
    text += internal::reference::section(part_list_section, "At the top of a part list");
    text +=
        fmt::format("# The settings file\n\n"
                    "`{}` beside the bank files, or in a folder above them, up to the folder given to the command: the "
                    "nearest one counts, for `bankwright check` alone. What the command line says wins.\n\n",
                    settings_file_name);
    text += internal::reference::section(settings_section, "Its keys");
    text += fmt::format("# A file of readings\n\n"
                        "What a meter showed on a bank, for `bankwright trace FILE READINGS`; at most {} readings. It "
                        "is best begun with "
                        "`{} = 1`: then a folder of bank files may hold it.\n\n",
                        ReadLimits{}.readings, keys::readings_version);
    text += internal::reference::section(readings_root_section, "At the top of a file of readings");
    for (auto const* section : {&meter_section, &clamp_section, &state_section})
        text += internal::reference::section(*section, fmt::format("`[{}]`", section->name));
    for (auto const* section : {&volts_section, &amps_section})
        text += internal::reference::section(*section, fmt::format("`[[{}]]`", section->name));
    text += fmt::format(
        "# The log of a hook-up\n\n"
        "What was read while a bank was put together: `bankwright hookup FILE --log LOG` writes it and goes "
        "on from it, and judges one that somebody else has written. It is begun with `{} = 1`. The "
        "answers stand in the order in which they were given; one about the same line of the sheet takes "
        "the place of the one before.\n\n",
        keys::log_version);
    text += internal::reference::section(log_root_section, "At the top of a log");
    text += internal::reference::section(meter_section, "`[meter]`, as in a file of readings");
    text += fmt::format("## `[{}]`\n\nTexts by part: {}.\n\n", log_marks_section, log_marks_meaning);
    text += internal::reference::section(log_entry_section, fmt::format("`[[{}]]`", log_entry_section.name));
    text.pop_back();
    return text;
}

} // namespace bankwright
