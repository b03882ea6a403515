#include "commands/schema.hpp"

#include "bankwright/config/json_schema.hpp"
#include "bankwright/config/key_reference.hpp"
#include "common_options.hpp"

Usage SchemaCommand::usage() {
    return {.options = {how_to_print(format, {Format::json, Format::markdown}),
                        {.names = "--keys",
                         .kind = option::Flag{[this] { format = Format::markdown; }},
                         .help = "The same for people to read: every key, in Markdown",
                         .excludes = {"--format"}},
                        {.names = "--readings",
                         .kind = flag(readings),
                         .help = "The schema of a file of readings, for trace",
                         .excludes = {"--format", "--keys"}},
                        {.names = "--log",
                         .kind = flag(log),
                         .help = "That of the log of a hook-up, for hookup --log",
                         .excludes = {"--format", "--keys", "--readings"}}},
            .closing = "Example: bankwright schema > bank.schema.json"};
}

Outcome SchemaCommand::run(bool) const {
    if (format == Format::markdown) return {bankwright::key_reference(), {}, ExitCode::clean};
    if (log) return {bankwright::log_json_schema(), {}, ExitCode::clean};
    return {readings ? bankwright::readings_json_schema() : bankwright::json_schema(), {}, ExitCode::clean};
}
