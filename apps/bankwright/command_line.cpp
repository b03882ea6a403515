#include "command_line.hpp"

#include "bankwright/text/closest.hpp"
#include "bankwright/text/escape.hpp"
#include "bankwright/units/parse.hpp"
#include "bankwright/version.hpp"
#include "commands/rule_names.hpp"
#include "meter_words.hpp"

#include <algorithm>
#include <map>

#include <CLI/CLI.hpp>

namespace {

using namespace bankwright;

constexpr char about[] = "Describe a small boat's battery bank in one file, find what is miswired, undersized or "
                         "unprotected, and solve its voltages and currents.";
constexpr char statuses[] =
    "Exit status: 0 nothing at or above --fail-on, 1 something was, 2 the input could not be read "
    "or wrong usage, 3 a fault of the program itself.";

std::map<std::string, Format> const formats{{"text", Format::text},         {"json", Format::json},
                                            {"sarif", Format::sarif},       {"junit", Format::junit},
                                            {"markdown", Format::markdown}, {"csv", Format::csv}};
std::map<std::string, Level> const levels{{"error", Level::error}, {"warning", Level::warning}, {"note", Level::note}};

struct Words { // options as typed
    std::string format = "text";
    std::string fail_on; // empty: not said
    std::vector<std::string> only;
    std::vector<std::string> skip;
    std::vector<std::string> current; // empty where there is no such option; it may still be ""
    std::vector<std::string> throttle;
    std::vector<std::string> longest;
    std::vector<std::string> rest_time;
    std::vector<std::string> charge;
    std::vector<std::string> runtime;
    std::vector<std::string> ambient;
    std::string sizes = "AWG";
    std::vector<std::string> spreads;
    std::vector<std::string> meter;
    std::vector<std::string> resolution;
    std::vector<std::string> charge_within;
};

// The commands there are. Only those that are named among the arguments get their options: making all of them took a
// quarter of the time of checking one file.
class Commands {
public:
    Commands(CLI::App& app, int argc, char const* const* argv)
        : app_(app), arguments_(argv, argv + std::max(0, argc)) {}

    CLI::App& add(std::string const& name, std::string const& what) { return *app_.add_subcommand(name, what); }
    bool names(CLI::App const& command) const {
        return std::find(arguments_.begin(), arguments_.end(), command.get_name()) != arguments_.end();
    }

private:
    CLI::App& app_;
    std::vector<std::string> arguments_;
};

// --current and --throttle: what the motors do meanwhile. They exclude each other.
struct MomentOptions {
    CLI::Option* current;
    CLI::Option* throttle;
};

CLI::Option* add_format(CLI::App& command, Words& words, std::vector<std::string> const& known) {
    return command.add_option("--format", words.format, "How to print it")
        ->check(CLI::IsMember(known))
        ->type_name("FORMAT")
        ->capture_default_str();
}

CLI::App& add_check(Commands& commands, CheckRequest& request, Words& words) {
    auto& command = commands.add("check", "Say what is wrong with banks, why, and what to do");
    if (!commands.names(command)) return command;
    command
        .add_option("file", request.files,
                    "Bank files, folders that hold them, or patterns such as \"boats/**/*.toml\"; - is standard input")
        ->required()
        ->type_name("FILE");
    add_format(command, words, {"text", "json", "sarif", "junit"});
    command
        .add_option("--fail-on", words.fail_on,
                    "Exit with 1 if there is a finding of this level or a worse one [error]")
        ->check(CLI::IsMember(std::vector<std::string>{"error", "warning", "note"}))
        ->type_name("LEVEL");
    for (auto* const chosen : {&words.only, &words.skip}) {
        bool const only = chosen == &words.only;
        command
            .add_option(only ? "--only" : "--skip", *chosen,
                        only ? "Look for these rules or families alone" : "Do not look for these rules or families")
            ->delimiter(',')
            ->allow_extra_args(false)
            ->type_name("ID,...");
    }
    command.add_option("--output,-o", request.output, "Write the findings into this file, whole or not at all")
        ->type_name("FILE");
    command.add_flag("--all", request.all, "Show consequences of other findings, and accepted findings, too");
    command.footer(
        std::string("--fail-on, --only and --skip may stand in a bankwright-settings.toml beside the files or "
                    "above them.\nExample: bankwright check boats --fail-on warning\n\n") +
        statuses);
    return command;
}

MomentOptions add_moment(CLI::App& command, Words& words) {
    auto* current =
        command.add_option("--current", words.current, "Every motor (or the one load) draws this, such as \"40 A\"")
            ->expected(1)
            ->type_name("CURRENT");
    auto* throttle = command.add_option("--throttle", words.throttle, "Of every motor, such as \"60 %\"")
                         ->expected(1)
                         ->type_name("SHARE");
    current->excludes(throttle);
    return {current, throttle};
}

CLI::App& add_solve(Commands& commands, SolveRequest& request, Words& words, bool& rest) {
    auto& command = commands.add("solve", "Terminal voltages and the current in every part");
    if (!commands.names(command)) return command;
    command.add_option("file", request.file, "A bank file; - is standard input")->required()->type_name("FILE");
    add_format(command, words, {"text", "json"});
    auto const moment = add_moment(command, words);
    auto* at_rest = command.add_flag("--rest", rest, "Every motor and load off");
    moment.current->excludes(at_rest);
    moment.throttle->excludes(at_rest);
    command.footer(std::string("Example: bankwright solve boat.toml --current \"40 A\"\n\n") + statuses);
    return command;
}

CLI::App& add_discharge(Commands& commands, DischargeRequest& request, Words& words) {
    auto& command = commands.add("discharge", "How long it runs, which battery ends the run, and how charge and "
                                              "current go on the way");
    if (!commands.names(command)) return command;
    command.add_option("file", request.file, "A bank file; - is standard input")->required()->type_name("FILE");
    add_format(command, words, {"text", "json"});
    auto const moment = add_moment(command, words);
    auto* duty = command
                     .add_option("--duty", request.duty,
                                 "A file of the trip's legs: [[leg]] throttle = \"60 %\", duration = \"20 min\"")
                     ->type_name("FILE");
    duty->excludes(moment.current)->excludes(moment.throttle);
    command.add_option("--for", words.longest, "Stop after this time, such as \"2 h\"")->expected(1)->type_name("TIME");
    command.add_option("--rest", words.rest_time, "Then lie still for this time: batteries in parallel even out")
        ->expected(1)
        ->type_name("TIME");
    command.footer(std::string("Example: bankwright discharge boat.toml --throttle \"60 %\"\n\n") + statuses);
    return command;
}

CLI::App& add_recharge(Commands& commands, RechargeRequest& request, Words& words) {
    auto& command = commands.add("recharge", "How long the chargers take, stage by stage, and whether every "
                                             "battery is full then");
    if (!commands.names(command)) return command;
    command.add_option("file", request.file, "A bank file; - is standard input")->required()->type_name("FILE");
    add_format(command, words, {"text", "json"});
    command.add_option("--charge", words.charge, "Of every battery at the start, such as \"40 %\"; else the file's")
        ->expected(1)
        ->type_name("SHARE");
    command.add_option("--for", words.longest, "Stop after this time, such as \"8 h\"")->expected(1)->type_name("TIME");
    command.footer(std::string("Example: bankwright recharge boat.toml\n\n") + statuses);
    return command;
}

CLI::App& add_size(Commands& commands, SizeRequest& request, Words& words) {
    auto& command = commands.add("size", "The smallest conductors, breakers and number of strings that every rule "
                                         "is content with, why no less, and a cut list");
    if (!commands.names(command)) return command;
    command.add_option("file", request.file, "A bank file; - is standard input")->required()->type_name("FILE");
    add_format(command, words, {"text", "markdown", "csv", "json"});
    command.add_option("--sizes", words.sizes, "Sizes of the cut list: AWG or mm2")
        ->check(CLI::IsMember(std::vector<std::string>{"AWG", "mm2"}))
        ->type_name("SYSTEM")
        ->capture_default_str();
    command.add_option("--runtime", words.runtime, "How long it shall run, such as \"2 h\"; else the file's")
        ->expected(1)
        ->type_name("TIME");
    command.add_option("--ambient", words.ambient, "How warm it may be, such as \"40 degC\"; else the file's")
        ->expected(1)
        ->type_name("TEMPERATURE");
    command.add_flag("--keep-strings", request.options.keep_strings, "Leave the number of strings as drawn");
    command.footer(std::string("Example: bankwright size boat.toml --runtime \"2 h\" --format markdown\n\n") +
                   statuses);
    return command;
}

CLI::App& add_tolerance(Commands& commands, ToleranceRequest& request, Words& words) {
    auto& command = commands.add("tolerance", "How far voltages, currents and run time spread when nothing is quite as "
                                              "stated, the worst that can be, what matters most, and which rules "
                                              "that sets off");
    if (!commands.names(command)) return command;
    command.add_option("file", request.file, "A bank file; - is standard input")->required()->type_name("FILE");
    add_format(command, words, {"text", "json"});
    add_moment(command, words);
    command
        .add_option("--spread", words.spreads,
                    "How far a value may lie to either side where the file does not say, such as resistance=10%; of "
                    "resistance (batteries), charge, capacity, conductor, joint, contact")
        ->delimiter(',')
        ->allow_extra_args(false)
        ->type_name("KEY=SHARE,...");
    command.add_option("--draws", request.options.draws, "How many banks are drawn and solved")
        ->check(CLI::Range(std::size_t{1}, std::size_t{1'000'000'000}))
        ->type_name("N")
        ->capture_default_str();
    command.add_option("--check", request.checked, "On how many of them every rule is tried")
        ->check(CLI::Range(std::size_t{0}, std::size_t{1'000'000}))
        ->type_name("N")
        ->capture_default_str();
    command.add_option("--seed", request.options.seed, "Of the draws: the same seed gives the same answer")
        ->type_name("N")
        ->capture_default_str();
    command
        .add_option("--threads", request.options.threads, "To draw and solve with; the answer does not depend on it")
        ->check(CLI::Range(1, 1024))
        ->type_name("N")
        ->capture_default_str();
    command.footer(
        std::string("A value of the file may state its own, as in resistance = \"4 mohm +/- 10 %\".\nExample: "
                    "bankwright tolerance boat.toml --spread joint=80%\n\n") +
        statuses);
    return command;
}

// What a picture of a bank is asked for: of which file, where to, at which moment.
void add_picture(CLI::App& command, std::string& file, std::string& output, Words& words, bool& rest) {
    command.add_option("file", file, "A bank file; - is standard input")->required()->type_name("FILE");
    command.add_option("-o,--output", output, "Write it into this file instead of standard output")->type_name("FILE");
    auto const moment = add_moment(command, words);
    auto* at_rest = command.add_flag("--rest", rest, "Every motor and load off");
    moment.current->excludes(at_rest);
    moment.throttle->excludes(at_rest);
}

CLI::App& add_draw(Commands& commands, DrawRequest& request, Words& words, bool& rest) {
    auto& command = commands.add("draw", "The bank as a wiring diagram, with readings and findings on it: SVG");
    if (!commands.names(command)) return command;
    add_picture(command, request.file, request.output, words, rest);
    command.footer(std::string("Example: bankwright draw boat.toml -o boat.svg\n\n") + statuses);
    return command;
}

void add_meter(CLI::App& command, Words& words) {
    command
        .add_option("--meter", words.meter,
                    "How far the meter may be off (default \"0.5 % + 2 digits\", common practice)")
        ->expected(1)
        ->type_name("ACCURACY");
    command
        .add_option("--resolution", words.resolution,
                    "One digit of the meter (default \"10 mV\" below 20 V and \"100 mV\" above)")
        ->expected(1)
        ->type_name("VOLTAGE");
    command
        .add_option("--charge-within", words.charge_within,
                    "How near each battery is to the charge that the file states (default \"5 %\")")
        ->expected(1)
        ->type_name("SHARE");
}

CLI::App& add_hookup(Commands& commands, HookupRequest& request, Words& words) {
    auto& command = commands.add("hookup", "The order in which to connect it, what the meter must read at each "
                                           "step, and what a wrong reading means; then how to take it apart");
    if (!commands.names(command)) return command;
    command.add_option("file", request.file, "A bank file; - is standard input")->required()->type_name("FILE");
    add_format(command, words, {"text", "json"});
    add_meter(command, words);
    command.footer(std::string("Example: bankwright hookup boat.toml --meter \"0.8 % + 1 digit\"\n\n") + statuses);
    return command;
}

CLI::App& add_report(Commands& commands, ReportRequest& request, Words& words, bool& rest) {
    auto& command = commands.add("report", "Everything about it on one page for a phone, a desk and a printer: HTML");
    if (!commands.names(command)) return command;
    add_picture(command, request.file, request.output, words, rest);
    add_meter(command, words);
    command.footer(std::string("Example: bankwright report boat.toml -o boat.html\n\n") + statuses);
    return command;
}

CLI::App& add_short_circuit(Commands& commands, ShortCircuitRequest& request, Words& words) {
    auto& command = commands.add("short-circuit", "What flows into a short anywhere in it, what ends that and how "
                                                  "soon, and what each conductor lives through");
    if (!commands.names(command)) return command;
    command.add_option("file", request.file, "A bank file; - is standard input")->required()->type_name("FILE");
    add_format(command, words, {"text", "json"});
    command.footer(std::string("Example: bankwright short-circuit boat.toml\n\n") + statuses);
    return command;
}

CLI::App& add_trace(Commands& commands, TraceRequest& request, Words& words) {
    auto& command =
        commands.add("trace", "What is wrong with a bank that reads otherwise than it was drawn, and what to "
                              "read next");
    if (!commands.names(command)) return command;
    command.add_option("file", request.file, "A bank file, as the bank should be; - is standard input")
        ->required()
        ->type_name("FILE");
    command.add_option("readings", request.readings, "A file of readings; - is standard input")
        ->required()
        ->type_name("READINGS");
    add_format(command, words, {"text", "json"});
    command.footer(std::string("Example: bankwright trace boat.toml readings.toml\n\n") + statuses);
    return command;
}

CLI::App& add_rules(Commands& commands, RulesRequest& request, Words& words) {
    auto& command = commands.add("rules", "What is looked for, why it matters, what to do, and where it comes from");
    if (!commands.names(command)) return command;
    command.add_option("id", request.id, "A rule, or a family of rules; all rules where there is none")
        ->type_name("ID");
    add_format(command, words, {"text", "json"});
    command.footer("Example: bankwright rules wiring/short-loop");
    return command;
}

CLI::App& add_schema(Commands& commands, SchemaRequest& request, Words& words) {
    auto& command = commands.add("schema", "What a bank file may contain: a JSON Schema, for editors");
    if (!commands.names(command)) return command;
    auto* format = add_format(command, words, {"json", "markdown"});
    words.format = "json";
    format->capture_default_str();
    auto* keys = command.add_flag("--keys", request.markdown, "The same for people: every key, in Markdown");
    keys->excludes(format);
    command.add_flag("--readings", request.readings, "That of a file of readings, for trace")
        ->excludes(format)
        ->excludes(keys);
    command.footer("Example: bankwright schema > bank.schema.json");
    return command;
}

// Empty if all is well.
std::string read_hookup(Words const& words, HookupOptions& options) {
    struct Option {
        char const* name;
        std::vector<std::string> const& typed;
        std::string (*read)(std::string const&, HookupOptions&);
    };
    for (auto const& option :
         {Option{"--meter: ", words.meter, read_meter}, Option{"--resolution: ", words.resolution, read_resolution},
          Option{"--charge-within: ", words.charge_within, read_charge_within}})
        if (!option.typed.empty())
            if (auto const problem = option.read(option.typed.front(), options); !problem.empty())
                return option.name + problem;
    return {};
}

// A first word that is neither a command nor an option; empty if there is none.
std::string unknown_command(CLI::App const& app, int argc, char const* const* argv) {
    std::string const word = argc > 1 ? argv[1] : "-";
    std::vector<std::string> known;
    for (auto const* command : app.get_subcommands([](CLI::App const*) { return true; }))
        known.push_back(command->get_name());
    if (word.substr(0, 1) == "-" || std::count(known.begin(), known.end(), word) > 0) return {};
    auto const nearest = closest(word, known);
    return "there is no command `" + terminal_safe(word) + "`" +
           (nearest ? "; did you mean `" + *nearest + "`?" : std::string());
}

// Empty if all is well.
std::string read_moment(Words const& words, bool rest, Moment& moment) {
    if (rest) moment.loads = LoadsAre::at_rest;
    if (!words.current.empty()) {
        auto const& typed = words.current.front();
        auto const current = parse<Current>(typed);
        if (!current.value) return "--current: " + current.problem;
        if (current.value->value() < 0.0)
            return "--current: `" + terminal_safe(typed) + "` is negative; a load draws 0 A or more";
        moment.loads = LoadsAre::constant_current;
        moment.current = *current.value;
    }
    if (!words.throttle.empty()) {
        auto const& typed = words.throttle.front();
        auto const throttle = parse<Throttle>(typed);
        if (!throttle.value) return "--throttle: " + throttle.problem;
        if (throttle.value->value() < 0.0 || throttle.value->value() > 1.0)
            return "--throttle: `" + terminal_safe(typed) + "` is out of range; a throttle is 0 % to 100 %";
        moment.throttle = *throttle.value;
    }
    return {};
}

// A time above 0, if one was typed; what is wrong with it, if anything is.
std::string read_time(std::string const& option, std::vector<std::string> const& typed, std::optional<Duration>& time) {
    if (typed.empty()) return {};
    auto const parsed = parse<Duration>(typed.front());
    if (!parsed.value) return option + ": " + parsed.problem;
    if (parsed.value->value() <= 0.0) return option + ": `" + terminal_safe(typed.front()) + "` is no time above 0";
    time = *parsed.value;
    return {};
}

std::string read_charge(std::vector<std::string> const& typed, std::optional<StateOfCharge>& charge) {
    if (typed.empty()) return {};
    auto const parsed = parse<StateOfCharge>(typed.front());
    if (!parsed.value) return "--charge: " + parsed.problem;
    if (parsed.value->value() < 0.0 || parsed.value->value() > 1.0)
        return "--charge: `" + terminal_safe(typed.front()) + "` is out of range; a charge is 0 % to 100 %";
    charge = *parsed.value;
    return {};
}

std::string read_ambient(std::vector<std::string> const& typed, std::optional<Temperature>& ambient) {
    if (typed.empty()) return {};
    auto const parsed = parse<Temperature>(typed.front());
    if (!parsed.value) return "--ambient: " + parsed.problem;
    if (in_celsius(*parsed.value) < -60.0 || in_celsius(*parsed.value) > 100.0)
        return "--ambient: `" + terminal_safe(typed.front()) + "` is out of range; -60 degC to 100 degC";
    ambient = *parsed.value;
    return {};
}

std::string read_spreads(std::vector<std::string> const& typed, Spreads& spreads) {
    std::map<std::string, Spread*> const known{{"resistance", &spreads.resistance}, {"charge", &spreads.charge},
                                               {"capacity", &spreads.capacity},     {"conductor", &spreads.conductor},
                                               {"joint", &spreads.joint},           {"contact", &spreads.contact}};
    for (auto const& one : typed) {
        auto const at = one.find('=');
        auto const key = known.find(one.substr(0, at));
        if (at == std::string::npos || key == known.end())
            return "--spread: `" + terminal_safe(one) +
                   "` is not KEY=SHARE; keys are resistance, charge, capacity, conductor, joint and contact";
        auto const share = parse<Spread>(one.substr(at + 1));
        if (!share.value) return "--spread: " + share.problem;
        if (share.value->value() < 0.0 || share.value->value() > 0.9)
            return "--spread: `" + terminal_safe(one) + "` is out of range; a spread is 0 % to 90 %";
        *key->second = *share.value;
    }
    return {};
}

} // namespace

Request read_command_line(int argc, char const* const* argv) {
    CLI::App app(about, "bankwright");
    app.set_version_flag("--version", "bankwright " BANKWRIGHT_VERSION);
    app.require_subcommand(1);
    app.footer(std::string("bankwright COMMAND --help says more.\nExample: bankwright check boat.toml\n\n") + statuses);

    CheckRequest check;
    SolveRequest solve;
    DischargeRequest discharge;
    RechargeRequest recharge;
    DrawRequest draw;
    HookupRequest hookup;
    ReportRequest report;
    ShortCircuitRequest short_circuit;
    SizeRequest size;
    ToleranceRequest tolerance;
    TraceRequest trace;
    RulesRequest rules;
    SchemaRequest schema;
    Words check_words, solve_words, discharge_words, recharge_words, draw_words, hookup_words, report_words,
        short_circuit_words, size_words, tolerance_words, trace_words, rules_words, schema_words;
    bool rest = false;
    bool draw_rest = false;
    bool report_rest = false;
    Commands commands(app, argc, argv);
    auto const& check_command = add_check(commands, check, check_words);
    auto const& solve_command = add_solve(commands, solve, solve_words, rest);
    auto const& discharge_command = add_discharge(commands, discharge, discharge_words);
    auto const& recharge_command = add_recharge(commands, recharge, recharge_words);
    auto const& draw_command = add_draw(commands, draw, draw_words, draw_rest);
    auto const& hookup_command = add_hookup(commands, hookup, hookup_words);
    auto const& report_command = add_report(commands, report, report_words, report_rest);
    auto const& short_circuit_command = add_short_circuit(commands, short_circuit, short_circuit_words);
    auto const& size_command = add_size(commands, size, size_words);
    auto const& tolerance_command = add_tolerance(commands, tolerance, tolerance_words);
    auto const& trace_command = add_trace(commands, trace, trace_words);
    auto const& rules_command = add_rules(commands, rules, rules_words);
    add_schema(commands, schema, schema_words);

    if (auto const problem = unknown_command(app, argc, argv); !problem.empty()) return Misuse{problem};
    try {
        app.parse(argc, argv);
    } catch (CLI::CallForVersion const& version) {
        return HelpRequest{std::string(version.what()) + "\n"};
    } catch (CLI::CallForHelp const&) {
        return HelpRequest{app.help()};
    } catch (CLI::ParseError const& error) {
        return Misuse{terminal_safe(error.what())};
    }

    if (check_command.parsed()) {
        check.format = formats.at(check_words.format);
        if (!check_words.fail_on.empty()) check.asked.fail_on = levels.at(check_words.fail_on);
        if (std::count(check.files.begin(), check.files.end(), "-") > 1)
            return Misuse{"standard input (-) can be read only once"};
        for (auto const* chosen : {&check_words.only, &check_words.skip})
            for (auto const& id : *chosen)
                if (auto const problem = unknown_rule(id); !problem.empty()) return Misuse{problem};
        if (!check_words.only.empty()) check.asked.only = check_words.only;
        if (!check_words.skip.empty()) check.asked.skip = check_words.skip;
        return check;
    }
    if (solve_command.parsed()) {
        solve.format = formats.at(solve_words.format);
        if (auto const problem = read_moment(solve_words, rest, solve.moment); !problem.empty()) return Misuse{problem};
        return solve;
    }
    if (discharge_command.parsed()) {
        discharge.format = formats.at(discharge_words.format);
        for (auto const& problem : {read_moment(discharge_words, false, discharge.moment),
                                    read_time("--for", discharge_words.longest, discharge.longest),
                                    read_time("--rest", discharge_words.rest_time, discharge.rest)})
            if (!problem.empty()) return Misuse{problem};
        return discharge;
    }
    if (recharge_command.parsed()) {
        recharge.format = formats.at(recharge_words.format);
        for (auto const& problem : {read_charge(recharge_words.charge, recharge.charge),
                                    read_time("--for", recharge_words.longest, recharge.longest)})
            if (!problem.empty()) return Misuse{problem};
        return recharge;
    }
    if (draw_command.parsed()) {
        if (auto const problem = read_moment(draw_words, draw_rest, draw.moment); !problem.empty())
            return Misuse{problem};
        return draw;
    }
    if (hookup_command.parsed()) {
        hookup.format = formats.at(hookup_words.format);
        if (auto const problem = read_hookup(hookup_words, hookup.options); !problem.empty()) return Misuse{problem};
        return hookup;
    }
    if (report_command.parsed()) {
        if (auto const problem = read_moment(report_words, report_rest, report.moment); !problem.empty())
            return Misuse{problem};
        if (auto const problem = read_hookup(report_words, report.hookup); !problem.empty()) return Misuse{problem};
        return report;
    }
    if (short_circuit_command.parsed()) {
        short_circuit.format = formats.at(short_circuit_words.format);
        return short_circuit;
    }
    if (size_command.parsed()) {
        size.format = formats.at(size_words.format);
        size.options.system = size_words.sizes == "mm2" ? SizeSystem::metric : SizeSystem::awg;
        for (auto const& problem : {read_time("--runtime", size_words.runtime, size.options.runtime),
                                    read_ambient(size_words.ambient, size.options.ambient)})
            if (!problem.empty()) return Misuse{problem};
        return size;
    }
    if (tolerance_command.parsed()) {
        tolerance.format = formats.at(tolerance_words.format);
        for (auto const& problem : {read_moment(tolerance_words, false, tolerance.options.moment),
                                    read_spreads(tolerance_words.spreads, tolerance.options.spreads)})
            if (!problem.empty()) return Misuse{problem};
        return tolerance;
    }
    if (trace_command.parsed()) {
        if (trace.file == "-" && trace.readings == "-") return Misuse{"standard input (-) can be read only once"};
        trace.format = formats.at(trace_words.format);
        return trace;
    }
    if (rules_command.parsed()) {
        rules.format = formats.at(rules_words.format);
        return rules;
    }
    schema.markdown = schema.markdown || schema_words.format == "markdown";
    return schema;
}
