// trace FILE READINGS: what is wrong with a bank that reads otherwise than it is described?
#pragma once

#include "command.hpp"

#include <string>

struct TraceCommand {
    static constexpr char name[] = "trace";
    static constexpr char about[] = "What is wrong with a bank that does not read as described, and what to read next";

    std::string file;
    std::string readings;
    Format format = Format::text;

    Usage usage(); // what is typed goes into the members above
    Outcome run(bool color) const;
};
