// `bankwright discharge FILE`: how long does it run, which battery ends the run, how does the sharing drift?
#pragma once

#include "bankwright/network/moment.hpp"
#include "bankwright/units/quantities.hpp"
#include "outcome.hpp"

#include <optional>
#include <string>

struct DischargeRequest {
    std::string file; // "-": standard input
    Format format = Format::text;
    bankwright::Moment moment;
    std::string duty; // the duty file; empty: none
    std::optional<bankwright::Duration> longest;
    std::optional<bankwright::Duration> rest;
};

Outcome run(DischargeRequest const& request, bool colour);
