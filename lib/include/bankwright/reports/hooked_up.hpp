// What a renderer of a hook-up is given: one file's bank and its steps, or why there are none.
#pragma once

#include "bankwright/analyses/hookup.hpp"
#include "bankwright/bank/bank.hpp"
#include "bankwright/findings/finding.hpp"
#include "bankwright/reports/report_head.hpp"

#include <algorithm>
#include <iterator>
#include <optional>
#include <string_view>

namespace bankwright {

struct HookedUp : ReportHead {
    Bank bank;
    HookupOptions options;
    std::optional<HookupResult> result; // none: refused
    Findings findings; // refused: the first that has to be corrected; else the errors that are not in the way
};

// What can hurt in the work itself: a short, wrong polarity, a battery turned, voltages that clash, a wiring of which
// no order can be told.
inline bool stops_hookup(Finding const& finding) {
    constexpr std::string_view rules[] = {"wiring/shorted-loop",   "wiring/shorted-battery", "wiring/reversed-battery",
                                          "wiring/reversed-load",  "wiring/system-voltage",  "wiring/unequal-strings",
                                          "wiring/open-circuit",   "wiring/unused-battery",  "matching/mixed-voltage",
                                          "charging/polarity",     "charging/not-isolated",  "load/over-voltage",
                                          "load/nameplate-voltage"};
    return finding.level == Level::error && !finding.accepted &&
           std::find(std::begin(rules), std::end(rules), finding.rule) != std::end(rules);
}

inline Findings said_with_hookup(Findings const& findings) {
    Findings said;
    for (auto const& finding : findings)
        if (finding.level == Level::error && !finding.accepted && !stops_hookup(finding)) said.push_back(finding);
    return said;
}

// The words of the JSON.
constexpr std::string_view name(HookupAction action) {
    switch (action) {
    case HookupAction::land:
        return "land";
    case HookupAction::fit:
        return "fit";
    case HookupAction::close:
        return "close";
    case HookupAction::read:
        return "read";
    case HookupAction::open:
        return "open";
    case HookupAction::mate:
        return "mate";
    }
    return "land";
}

constexpr std::string_view name(DeadCheckKind kind) {
    switch (kind) {
    case DeadCheckKind::run:
        return "run";
    case DeadCheckKind::loop:
        return "loop";
    case DeadCheckKind::apart:
        return "apart";
    case DeadCheckKind::load:
        return "load";
    case DeadCheckKind::hull:
        return "hull";
    }
    return "run";
}

constexpr std::string_view name(MistakeKind kind) {
    switch (kind) {
    case MistakeKind::battery_turned:
        return "battery-turned";
    case MistakeKind::battery_low:
        return "battery-low";
    case MistakeKind::cell_dead:
        return "cell-dead";
    case MistakeKind::end_elsewhere:
        return "end-elsewhere";
    case MistakeKind::leads_exchanged:
        return "leads-exchanged";
    case MistakeKind::not_joined:
        return "not-joined";
    case MistakeKind::bypassed:
        return "bypassed";
    case MistakeKind::across:
        return "across";
    }
    return "battery-turned";
}

} // namespace bankwright
