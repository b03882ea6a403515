#pragma once

#include "bankwright/bank/locate.hpp"
#include "bankwright/config/read.hpp"
#include "bankwright/findings/order.hpp"
#include "bankwright/rules/inspect.hpp"
#include "bankwright/rules/run.hpp"

#include <algorithm>
#include <iterator>
#include <utility>

namespace bankwright {

BANKWRIGHT_INLINE Inspection inspect(std::string_view text, ReadLimits const& limits) {
    auto read = bankwright::read(text, limits);
    Inspection seen;
    seen.findings = std::move(read.findings);
    seen.readable = read.readable;
    seen.as_written = read.readable && count(seen.findings).error == 0;
    if (read.readable) {
        bool const whole = read.left_out.empty();
        // Where parts are missing, only that is said which more parts cannot make untrue: a short stays a short.
        auto checked = check(read.bank, whole ? CheckOptions{}
                                              : CheckOptions{.only = {"wiring/short-loop", "wiring/shorted-battery", "matching"},
                                                             .skip = {}});
        if (whole) seen.arrangement = std::move(checked.arrangement);
        std::move(checked.findings.begin(), checked.findings.end(), std::back_inserter(seen.findings));
    }
    locate(seen.findings, read.map);
    order(seen.findings);
    seen.bank = std::move(read.bank);
    seen.map = std::move(read.map);
    seen.left_out = std::move(read.left_out);
    return seen;
}

} // namespace bankwright
