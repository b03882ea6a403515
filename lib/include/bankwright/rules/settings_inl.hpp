#pragma once

#include "bankwright/config/document.hpp"
#include "bankwright/config/read_part_lists_inl.hpp"
#include "bankwright/rules/rule_names.hpp"
#include "bankwright/rules/settings.hpp"

#include <utility>

namespace bankwright {

namespace settings {

// True if every word of the list chooses a rule; a word that does not is reported at its own place.
inline bool choose_rules(DocumentEntry const& list, reading::Report& report) {
    bool all = true;
    for (auto const& word : list.value.items) {
        if (names_rules(word.text)) continue;
        all = false;
        if (report.is_full()) continue;
        report.add(file_bad_value, {}, list.key, word.region,
                   fmt::format("`{}` names {}, which is no rule and no family of rules", list.key,
                               reading::in_backquotes(word.text)),
                   reading::help_with(report.nearest(word.text, rule_and_family_names()),
                                      "`bankwright rules` lists them all"));
    }
    return all;
}

inline void read_list(std::string_view key, DocumentValue const& root, reading::KeyReader& keys,
                      reading::Report& report, std::optional<std::vector<std::string>>& member) {
    keys(key, member);
    if (member && !choose_rules(*find_entry(root, key), report)) member.reset();
}

} // namespace settings

BANKWRIGHT_INLINE SettingsResult read_settings(std::string_view text, ReadLimits const& limits) {
    SettingsResult result;
    reading::Report report(limits);
    Document document;
    result.readable = reading::parse(text, limits, document, report);
    if (result.readable) {
        for (auto const& duplicate : document.duplicates)
            reading::report_problem(duplicate, report);
        auto const& root = document.root;
        reading::Models none;
        reading::KeyReader keys(settings_section, reading::Subject{{}, "the settings", Region{{1, 1}, {1, 1}}}, root,
                                none, report);
        keys("fail-on", result.settings.fail_on);
        settings::read_list("only", root, keys, report, result.settings.only);
        settings::read_list("skip", root, keys, report, result.settings.skip);
    }
    result.findings = report.take();
    return result;
}

} // namespace bankwright
