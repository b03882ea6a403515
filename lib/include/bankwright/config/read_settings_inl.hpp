// Bodies of read_settings.hpp.
#pragma once

#include "bankwright/config/document.hpp"
#include "bankwright/config/read_settings.hpp"
#include "bankwright/config/reader/read_document.hpp"
#include "bankwright/config/reader/read_part.hpp"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

namespace bankwright {

namespace internal::settings {

// True if every word of the list chooses a rule; a word that does not is reported at its own place.
inline bool choose_rules(DocumentEntry const& list, std::span<std::string_view const> choices,
                         internal::reader::Report& report) {
    bool all = true;
    for (auto const& word : list.value.items) {
        if (std::find(choices.begin(), choices.end(), word.text) != choices.end()) continue;
        all = false;
        if (report.is_full()) continue;
        report.add(
            file_bad_value, {}, list.key, word.region,
            fmt::format("`{}` names {}, which is neither a rule nor a family of rules", list.key,
                        internal::reader::in_backquotes(word.text)),
            internal::reader::help_with(report.nearest(word.text, choices), "`bankwright rules` lists them all"));
    }
    return all;
}

inline void read_list(std::string_view key, DocumentValue const& root, std::span<std::string_view const> choices,
                      internal::reader::KeyReader& keys, internal::reader::Report& report,
                      std::optional<std::vector<std::string>>& member) {
    keys(key, member);
    if (member && !choose_rules(*find_entry(root, key), choices, report)) member.reset();
}

} // namespace internal::settings

BANKWRIGHT_INLINE SettingsResult read_settings(std::string_view text, std::span<std::string_view const> choices,
                                               ReadLimits const& limits) {
    SettingsResult result;
    internal::reader::Report report(limits);
    Document document;
    result.readable = internal::reader::parse(text, limits, document, report);
    if (result.readable) {
        for (auto const& duplicate : document.duplicates)
            internal::reader::report_problem(duplicate, report);
        auto const& root = document.root;
        internal::reader::Models none;
        internal::reader::KeyReader keys(settings_section,
                                         internal::reader::Subject{{}, "the settings", Region{{1, 1}, {1, 1}}}, root,
                                         none, report);
        keys("fail-on", result.settings.fail_on);
        internal::settings::read_list("only", root, choices, keys, report, result.settings.only);
        internal::settings::read_list("skip", root, choices, keys, report, result.settings.skip);
    }
    result.findings = report.take();
    return result;
}

} // namespace bankwright
