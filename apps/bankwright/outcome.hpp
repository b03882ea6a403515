// What a command leaves behind: text for the two streams and a status. Commands return it; only main writes.
#pragma once

#include "exit_codes.hpp"

#include <algorithm>
#include <string>

// Where results go instead of standard output.
struct OutputFile {
    std::string name{};      // empty: nowhere else
    bool is_forced = false;  // over a read-only file, and through a link
    bool is_durable = false; // on the disk before anything else is done
};

struct Outcome {
    std::string out; // findings and results
    std::string err; // everything else
    ExitCode status = ExitCode::clean;
    OutputFile file{};      // where `out` goes, or, if there is one, what is for the file
    std::string for_file{}; // what a command makes beside its results

    void worsen(ExitCode other) { status = std::max(status, other); }
};

// How the results are printed. Not every command knows every one.
enum class Format { text, json, sarif, junit, markdown, csv, html, svg };

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
    case Format::html:
        return "html";
    case Format::svg:
        return "svg";
    }
    return "text";
}
