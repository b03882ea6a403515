#include "terminal.hpp"

#include "bankwright/text/escape.hpp"

#include <cerrno>
#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <string>

#include <unistd.h>

namespace {

// The number of the error; 0 if all of it was written.
int write_all(std::FILE* stream, std::string const& text) {
    errno = 0;
    bool const written = std::fwrite(text.data(), 1, text.size(), stream) == text.size() && std::fflush(stream) == 0;
    return written ? 0 : (errno != 0 ? errno : EIO);
}

} // namespace

bool standard_output_takes_colour() {
    auto const is_set = [](char const* value) { return value != nullptr && *value != '\0'; };
    auto const* terminal = std::getenv("TERM");
    bool const dumb = terminal != nullptr && std::strcmp(terminal, "dumb") == 0;
    return isatty(STDOUT_FILENO) == 1 && !is_set(std::getenv("NO_COLOR")) && !dumb;
}

namespace {

ExitCode write_file(Outcome const& outcome) {
    errno = 0;
    auto* const file = std::fopen(outcome.file.c_str(), "wb");
    auto error = file == nullptr ? errno : write_all(file, outcome.out);
    if (file != nullptr && std::fclose(file) != 0 && error == 0) error = errno;
    if (error == 0) return outcome.status;
    write_all(stderr, "bankwright: " + bankwright::terminal_safe(outcome.file) + ": " + std::strerror(error) + "\n");
    return ExitCode::unusable;
}

} // namespace

Outcome own_fault(std::string_view what) {
    return {{}, "bankwright: internal fault: " + std::string(what) + "\n", ExitCode::own_fault};
}

ExitCode deliver(Outcome const& outcome) {
    std::signal(SIGPIPE, SIG_IGN);
    write_all(stderr, outcome.err);
    if (!outcome.file.empty()) return write_file(outcome);
    auto const error = write_all(stdout, outcome.out);
    if (error == 0 || error == EPIPE) return outcome.status;
    write_all(stderr, std::string("bankwright: standard output: ") + std::strerror(error) + "\n");
    return ExitCode::own_fault;
}
