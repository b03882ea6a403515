#include "commands/recharge.hpp"

#include "bankwright/analyses/recharge.hpp"
#include "bankwright/reports/recharge_text.hpp"
#include "bankwright/reports/round_times.hpp"
#include "bankwright/reports/time_json.hpp"
#include "reading.hpp"
#include "refusal.hpp"
#include "through_time.hpp"

using namespace bankwright;

Outcome run(RechargeRequest const& request, bool colour) {
    auto reading = read_and_check(request.file);
    bool const as_text = request.format == Format::text;
    if (auto refused = refuse_unless_whole(reading, request.file, as_text, colour)) return *refused;
    if (auto const missing = missing_for_recharge(reading.bank)) return unusable(request.file, *missing);
    RechargeOptions options;
    options.charge = request.charge;
    if (request.longest) options.longest = *request.longest;
    auto run = recharge(reading.bank, options);
    if (run.duration.value() > 0.0) { // only how long it is tells which times are round
        options.every = round_step(run.duration);
        run = recharge(reading.bank, options);
    }
    Recharged const recharged{through_time(request.file, reading), std::move(run)};
    return {as_text ? recharge_text(recharged) : recharge_json(recharged),
            {},
            charges(recharged.run.end) ? ExitCode::clean : ExitCode::found};
}
