// The commands that there are.
#include "command.hpp"
#include "commands/check.hpp"
#include "commands/compare.hpp"
#include "commands/discharge.hpp"
#include "commands/draw.hpp"
#include "commands/hookup.hpp"
#include "commands/labels.hpp"
#include "commands/plan.hpp"
#include "commands/recharge.hpp"
#include "commands/report.hpp"
#include "commands/rules.hpp"
#include "commands/schema.hpp"
#include "commands/short_circuit.hpp"
#include "commands/size.hpp"
#include "commands/solve.hpp"
#include "commands/tolerance.hpp"
#include "commands/trace.hpp"

#include <memory>

namespace {

template <class Request>
Usage usage_of() {
    auto const request = std::make_shared<Request>();
    auto usage = request->usage();
    usage.run = [request](bool color) { return request->run(color); };
    return usage;
}

template <class Request>
Command command() {
    return {Request::name, Request::about, usage_of<Request>};
}

} // namespace

std::vector<Command> const& all_commands() {
    static std::vector<Command> const all{
        command<PlanCommand>(),         command<CheckCommand>(),    command<SolveCommand>(),
        command<DischargeCommand>(),    command<RechargeCommand>(), command<DrawCommand>(),
        command<HookupCommand>(),       command<LabelsCommand>(),   command<ReportCommand>(),
        command<ShortCircuitCommand>(), command<SizeCommand>(),     command<CompareCommand>(),
        command<ToleranceCommand>(),    command<TraceCommand>(),    command<RulesCommand>(),
        command<SchemaCommand>()};
    return all;
}
