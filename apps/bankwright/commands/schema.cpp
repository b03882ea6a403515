#include "commands/schema.hpp"

#include "bankwright/config/json_schema.hpp"
#include "bankwright/config/key_reference.hpp"

Outcome run(SchemaRequest const& request, bool) {
    if (request.markdown) return {bankwright::key_reference(), {}, ExitCode::clean};
    return {request.readings ? bankwright::readings_json_schema() : bankwright::json_schema(), {}, ExitCode::clean};
}
