// Body of read_duty.hpp.
#pragma once

#include "bankwright/config/document.hpp"
#include "bankwright/config/duty_keys.hpp"
#include "bankwright/config/read_duty.hpp"
#include "bankwright/config/reader/read_document.hpp"
#include "bankwright/config/reader/read_part.hpp"

#include <string>
#include <utility>

#include <fmt/format.h>

namespace bankwright {
namespace internal::reader {

// Every [[leg]], numbered from one in what is said of it.
inline void read_legs(DocumentEntry const& legs, Duty& duty, Models& none, Report& report) {
    constexpr auto in_brackets = "write [[leg]], in double brackets, above each";
    if (legs.value.kind != DocumentValue::Kind::array)
        return report.add(file_bad_value, {}, "leg", legs.region,
                          fmt::format("`leg` is {}; expected tables, each under [[leg]]", shown(legs.value)),
                          in_brackets);
    int number = 0;
    for (auto const& item : legs.value.items) {
        auto const title = fmt::format("[[leg]] {}", ++number);
        if (item.kind != DocumentValue::Kind::table) {
            report.add(file_bad_value, title, {}, item.region,
                       fmt::format("{} is {}; expected a table", title, shown(item)), in_brackets);
            continue;
        }
        KeyReader keys(duty_leg_section, Subject{title, title, item.region}, item, none, report);
        DutyLeg leg;
        keys("throttle", leg.throttle);
        keys("duration", leg.duration);
        if (keys.meets_requirements()) duty.legs.push_back(leg);
    }
}

inline void read_duty(DocumentValue const& root, DutyResult& result, Report& report) {
    DocumentEntry const* legs = nullptr;
    DocumentValue own; // the root without its legs
    for (auto const& entry : root.entries) {
        if (entry.key == "leg")
            legs = &entry;
        else
            own.entries.push_back(entry);
        if (entry.key != "bankwright" && entry.key != "batteries") continue;
        report.add(file_bad_value, {}, entry.key, entry.region, "a bank file, not a duty file",
                   "give the bank file as FILE and the duty file after --duty");
        result.readable = false;
        return;
    }
    Models none;
    Region const top{{1, 1}, {1, 1}};
    KeyReader keys(duty_root_section, Subject{{}, "the duty file", top}, own, none, report);
    std::optional<int> version;
    std::string name;
    keys(duty_version, version);
    keys("name", name);
    keys("repeat", result.duty.repeat);
    if (legs)
        read_legs(*legs, result.duty, none, report);
    else
        report.add(file_missing_key, {}, {}, top, "the duty file has no leg",
                   "add `[[leg]]` with `throttle = \"60 %\"` and `duration = \"20 min\"`");
}

} // namespace internal::reader

BANKWRIGHT_INLINE DutyResult read_duty(std::string_view text, ReadLimits const& limits) {
    DutyResult result;
    result.findings = internal::reader::read_alone(text, limits, result.readable,
                                                   [&](DocumentValue const& root, internal::reader::Report& report) {
                                                       internal::reader::read_duty(root, result, report);
                                                   });
    return result;
}

} // namespace bankwright
