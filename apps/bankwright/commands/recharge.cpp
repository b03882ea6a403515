#include "commands/recharge.hpp"

#include "bankwright/analyses/recharge.hpp"
#include "bankwright/reports/recharge_text.hpp"
#include "bankwright/reports/round_times.hpp"
#include "bankwright/reports/source_cautions.hpp"
#include "bankwright/reports/time_json.hpp"
#include "checked_file.hpp"
#include "common_options.hpp"
#include "refusal.hpp"

using namespace bankwright;

Usage RechargeCommand::usage() {
    return {.options = {bank_file(file),
                        how_to_print(format, {Format::text, Format::json}),
                        {.names = "--charge",
                         .kind = quantity<StateOfCharge>("--charge", charge, charge_problem),
                         .help = "Charge of every battery at the start, such as \"40 %\"; else the file's",
                         .stands_for = "SHARE"},
                        time_option("--for", longest, "Stop after this time, such as \"8 h\"")},
            .closing = with_statuses("Example: bankwright recharge boat.toml")};
}

Outcome RechargeCommand::run(bool color) const {
    auto checked = read_and_check(file);
    bool const as_text = format == Format::text;
    if (auto refused = refuse_unless_whole(checked, file, as_text, color)) return *refused;
    if (auto const missing = missing_for_recharge(checked.bank)) return unusable(file, *missing);
    RechargeOptions options;
    options.charge = charge;
    if (longest) options.longest = *longest;
    auto run = recharge(checked.bank, options);
    if (run.duration.value() > 0.0) { // only how long it is tells which times are round
        options.every = round_step(run.duration);
        run = recharge(checked.bank, options);
    }
    Recharged const recharged{through_time(checked.bank, head_of(checked, checked.bank, Asked::charge)), std::move(run),
                              sources_at_work(checked.bank)};
    return {as_text ? recharge_text(recharged) : recharge_json(recharged),
            {},
            charges(recharged.run.end) ? ExitCode::clean : ExitCode::found};
}
