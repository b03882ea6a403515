// `bankwright schema`: what may a bank file contain?
#pragma once

#include "outcome.hpp"

struct SchemaRequest {
    bool markdown = false; // the key reference for people, not the JSON Schema for editors
    bool readings = false; // the JSON Schema of a file of readings instead
};

Outcome run(SchemaRequest const& request, bool colour);
