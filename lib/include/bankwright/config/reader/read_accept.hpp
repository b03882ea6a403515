// Reads [[accept]]: findings that somebody has looked at.
#pragma once

#include "bankwright/config/read_result.hpp"
#include "bankwright/config/reader/read_names.hpp"
#include "bankwright/config/reader/read_part.hpp"

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace bankwright::internal::reader {

inline void read_acceptance(Subject const& subject, DocumentValue const& item, Names const& ids, Report& report,
                            Bank& bank) {
    Models models; // none: an acceptance has no model
    Acceptance acceptance;
    KeyReader keys(accept_section, subject, item, models, report);
    keys("rule", acceptance.rule);
    keys("part", acceptance.part);
    keys("reason", acceptance.reason);
    bool complete = keys.meets_requirements();
    if (keys.is_stated("part") && !keys.is_valid("part")) complete = false;
    if (keys.is_valid("part") && !ids.count(acceptance.part)) {
        complete = false;
        std::vector<std::string_view> names;
        for (auto const& [name, candidate] : ids)
            names.push_back(name);
        keys.fail(file_bad_value, "part",
                  fmt::format("names the part {}, which this bank does not have", in_backquotes(acceptance.part)),
                  help_with(report.nearest(acceptance.part, names), "name a part of this file, or leave `part` out"));
    }
    bool const has_reason = acceptance.reason.find_first_not_of(" \t\r\n") != std::string::npos;
    if (!has_reason && (keys.is_valid("reason") || !keys.is_stated("reason")))
        keys.fail(file_accept_without_reason, keys.is_stated("reason") ? "reason" : "",
                  "accepts a finding and does not say why",
                  "add `reason = \"...\"`: what makes it safe here, and who looked");
    if (complete) bank.accepted.push_back(std::move(acceptance));
}

inline void read_accepted(DocumentEntry const& section, Names const& ids, Report& report, ReadResult& result) {
    if (section.value.kind != DocumentValue::Kind::array)
        return report.add(file_bad_value, {}, section.key, section.region,
                          fmt::format("`accept` is {}; expected tables, each under [[accept]]", shown(section.value)),
                          "write [[accept]], in double brackets, above each");
    int number = 0;
    for (auto const& item : section.value.items) {
        auto const title = fmt::format("[[accept]] {}", ++number);
        Subject const subject{title, title, item.region};
        if (item.kind != DocumentValue::Kind::table) {
            report.add(file_bad_value, title, {}, item.region,
                       fmt::format("{} is {}; expected a table", title, shown(item)), "write [[accept]] above each");
            continue;
        }
        result.map.add(title, {}, item.region);
        for (auto const& entry : item.entries)
            result.map.add(title, entry.key, entry.region);
        read_acceptance(subject, item, ids, report, result.bank);
    }
}

} // namespace bankwright::internal::reader
