// What a renderer of a hook-up as it happens is given: the sheet, what was read so far, and what that amounts to.
#pragma once

#include "bankwright/analyses/hookup_judge.hpp"
#include "bankwright/bank/bank.hpp"
#include "bankwright/bank/hookup_log.hpp"
#include "bankwright/reports/report_head.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace bankwright {

struct LoggedHookup : ReportHead {
    Bank bank;
    HookupOptions options;
    std::string log_file; // as the user named it
    HookupLog log;
    HookupResult sheet;
    std::vector<HookupQuestion> questions;
    HookupJudgment judged;
    std::vector<std::string> changed; // parts that are not as they were when the log was begun
};

// The words of the JSON.
constexpr std::string_view name(HookupState state) {
    switch (state) {
    case HookupState::asking:
        return "asking";
    case HookupState::stopped:
        return "stopped";
    case HookupState::complete:
        return "complete";
    }
    return "asking";
}

} // namespace bankwright
