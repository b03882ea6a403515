#include "output_file.hpp"

#include <cerrno>
#include <cstddef>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <filesystem>
#include <system_error>

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

namespace fs = std::filesystem;

namespace {

Written failed(ExitCode status) { return {status, std::strerror(errno)}; }

// False where not all of it could be written; errno says why.
bool write_all(int file, std::string const& text) {
    for (std::size_t at = 0; at < text.size();) {
        auto const put = write(file, text.data() + at, text.size() - at);
        if (put < 0 && errno == EINTR) continue;
        if (put < 0) return false;
        at += static_cast<std::size_t>(put);
    }
    return true;
}

Written write_straight(fs::path const& path, std::string const& text) {
    int const file = open(path.c_str(), O_WRONLY | O_CLOEXEC);
    if (file < 0) return failed(ExitCode::unusable);
    bool const all = write_all(file, text);
    auto const error = errno;
    close(file);
    errno = error;
    return all ? Written() : failed(ExitCode::own_fault);
}

// Who may read a new file: as for any file that this process makes.
mode_t usual_mode() {
    auto const mask = umask(0);
    umask(mask);
    return 0666 & ~mask;
}

} // namespace

std::string input_that_is(std::string const& output, std::vector<std::string> const& inputs) {
    std::error_code error;
    for (auto const& input : inputs)
        if (input != "-" && fs::equivalent(output, input, error)) return input;
    return {};
}

Written write_file(std::string const& name, std::string const& text) {
    std::error_code error;
    auto path = fs::path(name);
    struct stat old {};
    bool const is_there = stat(name.c_str(), &old) == 0;
    if (is_there && S_ISDIR(old.st_mode)) return {ExitCode::unusable, "is a folder"};
    if (is_there && !S_ISREG(old.st_mode)) return write_straight(path, text);
    if (is_there) path = fs::canonical(path, error); // a link stays a link

    auto made = (path.parent_path() / ".bankwright-XXXXXX").native();
    int const file = mkstemp(made.data());
    if (file < 0) return failed(ExitCode::unusable);
    bool written = write_all(file, text) && fchmod(file, is_there ? old.st_mode & 07777 : usual_mode()) == 0;
    auto cause = errno;
    if (close(file) != 0 && written) {
        written = false;
        cause = errno;
    }
    if (written && std::rename(made.c_str(), path.c_str()) == 0) return {};
    if (written) cause = errno;
    unlink(made.c_str());
    errno = cause;
    return failed(ExitCode::own_fault);
}
