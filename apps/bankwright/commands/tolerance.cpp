#include "commands/tolerance.hpp"

#include "bankwright/reports/tolerance_json.hpp"
#include "bankwright/reports/tolerance_text.hpp"
#include "bankwright/rules/rule_shares.hpp"
#include "checked_file.hpp"
#include "common_options.hpp"
#include "moment_options.hpp"
#include "progress.hpp"
#include "refusal.hpp"

#include <map>
#include <utility>

using namespace bankwright;

namespace {

// "joint=80%"
std::string read_spread(std::string const& typed, Spreads& spreads) {
    std::map<std::string, Spread*> const known{{"resistance", &spreads.resistance}, {"charge", &spreads.charge},
                                               {"capacity", &spreads.capacity},     {"conductor", &spreads.conductor},
                                               {"joint", &spreads.joint},           {"contact", &spreads.contact}};
    auto const at = typed.find('=');
    auto const key = known.find(typed.substr(0, at));
    if (at == std::string::npos || key == known.end())
        return "--spread: `" + terminal_safe(typed) +
               "` is not KEY=SHARE; keys are resistance, charge, capacity, conductor, joint and contact";
    auto const share = parse<Spread>(typed.substr(at + 1));
    if (!share.value) return "--spread: " + share.problem;
    if (auto const problem = spread_problem(*share.value); !problem.empty())
        return "--spread: `" + terminal_safe(typed) + "` " + std::string(problem);
    *key->second = *share.value;
    return {};
}

} // namespace

Usage ToleranceCommand::usage() {
    Usage usage{.options = {bank_file(file), how_to_print(format, {Format::text, Format::json})},
                .closing = with_statuses("A value of the file may state its own, as in resistance = \"4 mohm +/- 10 "
                                         "%\".\nExample: bankwright tolerance boat.toml --spread joint=80%")};
    add_current_and_throttle(usage.options, options.moment);
    auto const add = [&](Option option) { usage.options.push_back(std::move(option)); };
    add({.names = "--spread",
         .kind = option::List{[this](std::string const& typed) { return read_spread(typed, options.spreads); }},
         .help = "How far a value may lie to either side where the file does not say, such as resistance=10%; of "
                 "resistance (batteries), charge, capacity, conductor, joint, contact",
         .stands_for = "KEY=SHARE,..."});
    add({.names = "--samples",
         .kind = option::Whole<std::size_t>{samples, 1, option_limits::most_samples},
         .help = "How many sample banks are solved; else 100000, fewer of a bank with very many motors",
         .stands_for = "N"});
    add({.names = "--check",
         .kind = option::Whole<std::size_t>{tried, 0, option_limits::most_checked_samples},
         .help = "On how many of them every rule is checked; else 200, fewer of a bank of very many parts",
         .stands_for = "N"});
    add({.names = "--seed",
         .kind = option::Seed{options.seed},
         .help = "Seed of the samples: the same seed gives the same answer",
         .stands_for = "N"});
    add({.names = "--threads",
         .kind = option::Whole<int>{options.threads, 1, option_limits::most_threads},
         .help = "Threads to solve them with; the answer does not depend on it",
         .stands_for = "N"});
    return usage;
}

Outcome ToleranceCommand::run(bool color) const {
    auto checked = read_and_check(file);
    bool const as_text = format == Format::text;
    if (auto refused = refuse_unless_whole(checked, file, as_text, color)) return *refused;
    if (auto const problem = too_many_to_vary(checked.bank)) return unusable(file, *problem);
    auto asked = options;
    asked.samples = samples == usual ? usual_samples(checked.bank) : samples;
    auto const checks = tried == usual ? usual_checks(checked.bank) : tried;
    Toleranced toleranced{
        head_of(checked, checked.bank, Asked::run, is_part(asked.moment)), asked, tolerance(checked.bank, asked), {}};
    if (toleranced.result.solved && checks > 0) {
        Progress progress(checks, "banks");
        RuleShareOptions shares;
        shares.spreads = options.spreads;
        shares.samples = checks;
        shares.seed = options.seed;
        shares.on_draw = [&](std::size_t done) { progress.at(done - 1); };
        toleranced.shares = rule_shares(checked.bank, shares);
    }
    auto const status = toleranced.result.solved ? ExitCode::clean : ExitCode::found;
    return {as_text ? tolerance_text(toleranced) : tolerance_json(toleranced), {}, status};
}
