// `bankwright schema`: what may a bank file contain?
#pragma once

#include "outcome.hpp"

struct SchemaRequest {
    bool markdown = false; // the key reference for people, not the JSON Schema for editors
};

Outcome run(SchemaRequest const& request, bool colour);
