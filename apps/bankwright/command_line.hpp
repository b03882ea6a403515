// What did the user ask for? Turns the arguments into one request.
#pragma once

#include "commands/check.hpp"
#include "commands/discharge.hpp"
#include "commands/draw.hpp"
#include "commands/hookup.hpp"
#include "commands/recharge.hpp"
#include "commands/report.hpp"
#include "commands/rules.hpp"
#include "commands/schema.hpp"
#include "commands/short_circuit.hpp"
#include "commands/size.hpp"
#include "commands/solve.hpp"
#include "commands/tolerance.hpp"
#include "commands/trace.hpp"

#include <string>
#include <variant>

struct HelpRequest {
    std::string text;
};

struct Misuse {
    std::string problem;
};

inline Outcome run(HelpRequest const& request, bool) { return {request.text, {}, ExitCode::clean}; }
inline Outcome run(Misuse const& misuse, bool) {
    return {{}, "bankwright: " + misuse.problem + "\nbankwright --help says how it is used\n", ExitCode::unusable};
}

using Request = std::variant<HelpRequest, Misuse, CheckRequest, SolveRequest, DischargeRequest, RechargeRequest,
                             DrawRequest, HookupRequest, ReportRequest, ShortCircuitRequest, SizeRequest,
                             ToleranceRequest, TraceRequest, RulesRequest, SchemaRequest>;

Request read_command_line(int argc, char const* const* argv);
