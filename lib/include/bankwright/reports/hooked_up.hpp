// What a renderer of a hook-up is given: one file's bank and its steps, or why there are none.
#pragma once

#include "bankwright/analyses/hookup.hpp"
#include "bankwright/bank/bank.hpp"
#include "bankwright/findings/finding.hpp"
#include "bankwright/reports/report_head.hpp"

#include <optional>
#include <string_view>

namespace bankwright {

struct HookedUp : ReportHead {
    Bank bank;
    HookupOptions options;
    std::optional<HookupResult> result; // none: refused
    Findings findings;                  // refused: the first that has to be put right
};

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
    }
    return "battery-turned";
}

} // namespace bankwright
