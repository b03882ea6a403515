#include "input.hpp"

#include <array>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <memory>

namespace {

struct Close {
    void operator()(std::FILE* file) const {
        if (file != stdin) std::fclose(file);
    }
};

} // namespace

Input read_input(std::string const& name, std::size_t limit) {
    std::unique_ptr<std::FILE, Close> const file(name == "-" ? stdin : std::fopen(name.c_str(), "rb"));
    if (!file) return {{}, std::strerror(errno)};
    Input input;
    std::array<char, 65536> chunk;
    while (input.text.size() <= limit) {
        errno = 0;
        auto const got = std::fread(chunk.data(), 1, chunk.size(), file.get());
        input.text.append(chunk.data(), got);
        if (got == chunk.size()) continue;
        if (std::ferror(file.get())) return {{}, std::strerror(errno)};
        break;
    }
    return input;
}
