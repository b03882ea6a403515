#include "tree.hpp"

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <system_error>

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

namespace fs = std::filesystem;

namespace {

// A file descriptor that closes itself; negative: none, and errno says why.
class Descriptor {
public:
    explicit Descriptor(int number) : number_(number) {}
    Descriptor(Descriptor const&) = delete;
    Descriptor& operator=(Descriptor const&) = delete;
    ~Descriptor() { reset(-1); }

    int number() const { return number_; }
    void reset(int number) {
        int const error = errno;
        if (number_ >= 0) close(number_);
        number_ = number;
        errno = error;
    }

private:
    int number_;
};

// Opens each folder on the way by itself and refuses links, so that nothing can be exchanged between a look and a read.
int open_below(std::string const& root, fs::path const& path) {
    Descriptor folder(open(root.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
    if (folder.number() < 0) return -1;
    for (auto const& part : path.parent_path()) {
        folder.reset(openat(folder.number(), part.c_str(), O_RDONLY | O_DIRECTORY | O_NOFOLLOW | O_CLOEXEC));
        if (folder.number() < 0) return -1;
    }
    return openat(folder.number(), path.filename().c_str(), O_RDONLY | O_NOFOLLOW | O_NONBLOCK | O_CLOEXEC);
}

// At most `limit` bytes and one more, so that the reader sees that it is too much.
Input read_all(int file, std::size_t limit) {
    struct stat status {};
    if (fstat(file, &status) != 0) return {{}, std::strerror(errno)};
    if (!S_ISREG(status.st_mode)) return {{}, "not a regular file"};
    Input input;
    char chunk[65536];
    while (input.text.size() <= limit) {
        auto const got = read(file, chunk, sizeof chunk);
        if (got < 0) return {{}, std::strerror(errno)};
        if (got == 0) break;
        input.text.append(chunk, static_cast<std::size_t>(got));
    }
    return input;
}

} // namespace

Tree::Tree(std::string root) : root_(std::move(root)) {
    std::error_code error;
    place_ = fs::canonical(root_, error).native();
}

std::optional<std::string> Tree::folder_of(std::string const& file) const {
    std::error_code error;
    auto const parent = fs::path(file).parent_path();
    auto const place = fs::canonical(parent.empty() ? fs::path(".") : parent, error);
    if (error || place_.empty()) return std::nullopt;
    auto const path = place.lexically_relative(place_);
    if (path.empty() || *path.begin() == "..") return std::nullopt;
    return path == "." ? std::string() : path.generic_string();
}

Tree::Text const& Tree::text(std::string const& path, std::size_t limit) {
    auto const [at, is_new] = texts_.try_emplace(path);
    auto& text = at->second;
    if (!is_new) return text;
    text.file = (fs::path(root_) / path).lexically_normal().generic_string();
    Descriptor const file(open_below(root_, path));
    if (file.number() >= 0) {
        text.input = read_all(file.number(), limit);
        return text;
    }
    text.is_missing = errno == ENOENT;
    text.input.trouble = errno == ELOOP || errno == ENOTDIR ? "lies behind a link" : std::strerror(errno);
    return text;
}

std::vector<std::string> Tree::files() const {
    std::vector<std::string> names;
    for (auto const& [path, text] : texts_)
        if (!text.is_missing) names.push_back(text.file);
    return names;
}

bankwright::PartListText Tree::part_list(std::string const& folder, std::string const& path, std::size_t limit) {
    auto const from_root = (fs::path(folder) / path).lexically_normal();
    bool const is_file = from_root.has_filename() && from_root != ".";
    if (from_root.is_absolute() || *from_root.begin() == "..")
        return {{}, {}, "lies outside `" + root_ + "`, the folder that is checked"};
    if (!is_file) return {{}, {}, "is a folder"};
    auto const& found = text(from_root.generic_string(), limit);
    auto const& trouble = found.input.trouble;
    if (found.is_missing) return {{}, {}, "is not there: no file `" + found.file + "`"};
    if (!trouble.empty()) return {{}, {}, "cannot be read: `" + found.file + "`: " + trouble};
    return {found.file, found.input.text, {}};
}
