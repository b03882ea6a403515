// What a command leaves behind: text for the two streams and a status. Commands return it; only main writes.
#pragma once

#include "exit_codes.hpp"

#include <algorithm>
#include <string>

struct Outcome {
    std::string out; // findings and results
    std::string err; // everything else
    ExitCode status = ExitCode::clean;
    std::string file{}; // `out` goes into this file instead of standard output; empty: it does not

    void worsen(ExitCode other) { status = std::max(status, other); }
};

// How the results are printed. Not every command knows every one.
enum class Format { text, json, sarif, junit, markdown, csv };

// The word for --format.
constexpr char const* name(Format format) {
    switch (format) {
    case Format::text:
        return "text";
    case Format::json:
        return "json";
    case Format::sarif:
        return "sarif";
    case Format::junit:
        return "junit";
    case Format::markdown:
        return "markdown";
    case Format::csv:
        return "csv";
    }
    return "text";
}
