#include "commands/recharge.hpp"

#include "reading.hpp"
#include "refusal.hpp"
#include "through_time.hpp"

#include "bankwright/analyses/recharge.hpp"
#include "bankwright/reports/recharge_text.hpp"
#include "bankwright/reports/time_json.hpp"

using namespace bankwright;

Outcome run(RechargeRequest const& request, bool colour) {
    auto reading = read_and_check(request.file);
    bool const as_text = request.format == Format::text;
    if (auto refused = refuse_unless_whole(reading, request.file, as_text, colour)) return *refused;
    if (auto const missing = missing_for_recharge(reading.bank)) return unusable(request.file, *missing);
    RechargeOptions options;
    options.charge = request.charge;
    if (request.longest) options.longest = *request.longest;
    Recharged const recharged{through_time(request.file, reading), recharge(reading.bank, options)};
    bool const filled = recharged.run.end != RechargeEnd::nothing_charges;
    return {
        as_text ? recharge_text(recharged) : recharge_json(recharged), {}, filled ? ExitCode::clean : ExitCode::found};
}
