#include "terminal.hpp"

#include "bankwright/text/escape.hpp"
#include "output_file.hpp"

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

bool is_capable_terminal(int stream) {
    auto const* terminal = std::getenv("TERM");
    bool const dumb = terminal != nullptr && std::strcmp(terminal, "dumb") == 0;
    return isatty(stream) == 1 && !dumb;
}

} // namespace

bool standard_output_takes_color() {
    auto const is_set = [](char const* value) { return value != nullptr && *value != '\0'; };
    return is_capable_terminal(STDOUT_FILENO) && !is_set(std::getenv("NO_COLOR"));
}

bool standard_error_is_a_terminal() { return is_capable_terminal(STDERR_FILENO); }

Outcome own_fault(std::string_view what) {
    return {{}, "bankwright: internal fault: " + std::string(what) + "\n", ExitCode::own_fault};
}

ExitCode deliver(Outcome const& outcome) {
    std::signal(SIGPIPE, SIG_IGN);
    write_all(stderr, outcome.err);
    auto const not_written = [&](std::string const& where, std::string const& why) {
        write_all(stderr, "bankwright: " + bankwright::terminal_safe(where) + ": " + why + "\n");
        return std::max(outcome.status, ExitCode::unusable);
    };
    if (auto const& file = outcome.file; !file.name.empty()) {
        auto const trouble = write_file(file, outcome.for_file.empty() ? outcome.out : outcome.for_file);
        if (!trouble.empty()) return not_written(file.name, trouble);
        if (outcome.for_file.empty()) return outcome.status;
    }
    auto const error = write_all(stdout, outcome.out);
    if (error == 0 || error == EPIPE) return outcome.status;
    return not_written("standard output", error == EBADF ? "is closed; nothing was written" : std::strerror(error));
}
