// `bankwright schema`: what may a bank file contain?
#pragma once

#include "command.hpp"

struct SchemaCommand {
    static constexpr char name[] = "schema";
    static constexpr char about[] = "What a bank file may contain: a JSON Schema, for editors";

    Format format = Format::json; // markdown: the key reference for people, not the JSON Schema for editors
    bool readings = false;        // the JSON Schema of a file of readings instead
    bool log = false;

    Usage usage(); // what is typed goes into the members above
    Outcome run(bool color) const;
};
