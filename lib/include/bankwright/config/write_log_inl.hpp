// Bodies of write_log.hpp.
#pragma once

#include "bankwright/bank/part_kind.hpp"
#include "bankwright/config/fields.hpp"
#include "bankwright/config/keys.hpp"
#include "bankwright/config/log_keys.hpp"
#include "bankwright/config/writer/key_writer.hpp"
#include "bankwright/config/write_log.hpp"

#include <algorithm>
#include <cstdint>
#include <string_view>
#include <utility>

#include <fmt/format.h>

namespace bankwright {

namespace internal::log_writing {

// FNV-1a of 32 bits: a slip of the hand does not hide behind it, and nobody has a reason to forge one.
inline std::string mark_of(std::string_view text) {
    std::uint32_t hash = 2166136261U;
    for (char const c : text)
        hash = (hash ^ static_cast<unsigned char>(c)) * 16777619U;
    return fmt::format("{:08x}", hash);
}

inline constexpr char of_system[] = "[system]";

} // namespace internal::log_writing

BANKWRIGHT_INLINE PartMarks part_marks(Bank const& bank) {
    using namespace internal::writing;
    using internal::log_writing::mark_of;
    KeyWriter system(system_section, bank.tolerances, {});
    for_each_field(bank.system, system);
    PartMarks marks{{internal::log_writing::of_system, mark_of(system.lines())}};
    for_each_part(bank, [&](PartKind kind, auto const& part) {
        KeyWriter keys(section_spec(kind), bank.tolerances, id_of(part));
        for_each_field(part, keys);
        marks.emplace_back(id_of(part), mark_of(fmt::format("{} {}", section(kind), keys.inline_table())));
    });
    return marks;
}

BANKWRIGHT_INLINE std::vector<std::string> changed_since(PartMarks const& marks, Bank const& bank) {
    std::vector<std::string> changed;
    if (marks.empty()) return changed;
    auto const now = part_marks(bank);
    for (auto const& mark : now)
        if (std::find(marks.begin(), marks.end(), mark) == marks.end()) changed.push_back(mark.first);
    for (auto const& [part, mark] : marks)
        if (std::none_of(now.begin(), now.end(), [&part = part](auto const& one) { return one.first == part; }))
            changed.push_back(part);
    return changed;
}

BANKWRIGHT_INLINE std::string write(HookupLog const& log) {
    using internal::writing::key_of;
    using internal::writing::toml_string;
    auto text = fmt::format("{} = 1\n", keys::log_version);
    auto const add = [&](std::string_view key, std::string_view value) {
        text += fmt::format("{} = {}\n", key, toml_string(value));
    };
    if (!log.name.empty()) add("name", log.name);
    if (log.of_reading || log.digits || log.resolution) text += "\n[meter]\n";
    if (log.of_reading || log.digits)
        add("accuracy",
            fmt::format("{:.10g} % + {} digits", 100.0 * log.of_reading.value_or(0.0), log.digits.value_or(0)));
    if (log.resolution) add("resolution", print_exact(*log.resolution));
    if (!log.marks.empty()) text += fmt::format("\n[{}]\n", log_marks_section);
    for (auto const& [part, mark] : log.marks)
        add(key_of(part), mark);
    for (auto const& entry : log.entries) {
        text += fmt::format("\n[[{}]]\n", log_entry_section.name);
        add("when", name(entry.when));
        if (!entry.part.empty()) add("part", entry.part);
        if (!entry.red.empty()) add("red", entry.red);
        if (!entry.black.empty()) add("black", entry.black);
        add("reads", written(entry.reads));
        if (!entry.time.empty()) add("time", entry.time);
    }
    return text;
}

} // namespace bankwright
