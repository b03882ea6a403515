#include "commands/schema.hpp"

#include "bankwright/config/json_schema.hpp"
#include "bankwright/config/key_reference.hpp"

Outcome run(SchemaRequest const& request, bool) {
    return {request.markdown ? bankwright::key_reference() : bankwright::json_schema(), {}, ExitCode::clean};
}
