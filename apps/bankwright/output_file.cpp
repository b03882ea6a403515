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

std::string why() { return std::strerror(errno); }

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

std::string write_straight(fs::path const& path, std::string const& text) {
    int const file = open(path.c_str(), O_WRONLY | O_CLOEXEC);
    if (file < 0) return why();
    bool const all = write_all(file, text);
    auto const error = errno;
    close(file);
    errno = error;
    return all ? std::string() : why();
}

// So that the new name is on the disk too; a file system that cannot say so loses nothing by it.
void sync_folder(fs::path const& folder) {
    int const opened = open(folder.empty() ? "." : folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (opened < 0) return;
    fsync(opened);
    close(opened);
}

// Who may read a new file: as for any file that this process makes.
mode_t usual_mode() {
    auto const mask = umask(0);
    umask(mask);
    return 0666 & ~mask;
}

// Whoever made it a link or read-only meant that it stays. Empty if neither.
std::string protection_of(std::string const& name, struct stat const& old) {
    std::error_code error;
    if (fs::is_symlink(fs::symlink_status(name, error)))
        return "is a link to `" + fs::read_symlink(name, error).native() +
               "`; nothing was written. Name that file itself, or add --force";
    bool const is_read_only = (old.st_mode & 0222) == 0 || access(name.c_str(), W_OK) != 0;
    return is_read_only ? "is read-only; nothing was written. Use another name, or add --force" : "";
}

} // namespace

std::string input_that_is(std::string const& output, std::vector<std::string> const& inputs) {
    std::error_code error;
    for (auto const& input : inputs)
        if (input != "-" && fs::equivalent(output, input, error)) return input;
    return {};
}

std::string write_file(OutputFile const& file, std::string const& text) {
    auto const& name = file.name;
    std::error_code error;
    auto path = fs::path(name);
    struct stat old {};
    bool const is_there = stat(name.c_str(), &old) == 0;
    if (is_there && S_ISDIR(old.st_mode)) return "is a folder";
    if (is_there && !S_ISREG(old.st_mode)) return write_straight(path, text);
    if (is_there && !file.is_forced)
        if (auto const protection = protection_of(name, old); !protection.empty()) return protection;
    if (is_there) path = fs::canonical(path, error); // a link stays a link

    auto made = (path.parent_path() / ".bankwright-XXXXXX").native();
    int const fresh = mkstemp(made.data());
    if (fresh < 0) return why();
    bool written = write_all(fresh, text) && fchmod(fresh, is_there ? old.st_mode & 07777 : usual_mode()) == 0 &&
                   (!file.is_durable || fsync(fresh) == 0);
    auto cause = errno;
    if (close(fresh) != 0 && written) {
        written = false;
        cause = errno;
    }
    if (written && std::rename(made.c_str(), path.c_str()) == 0) {
        if (file.is_durable) sync_folder(path.parent_path());
        return {};
    }
    if (written) cause = errno;
    unlink(made.c_str());
    errno = cause;
    return why();
}
