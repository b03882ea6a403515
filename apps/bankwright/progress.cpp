#include "progress.hpp"

#include "terminal.hpp"

#include <cstdio>

namespace {

constexpr std::chrono::milliseconds patience{500}; // a shorter run needs no line
constexpr std::chrono::milliseconds interval{100};

} // namespace

Progress::Progress(std::size_t count, char const* things)
    : count_(count), things_(things), is_watched_(count > 1 && standard_error_is_a_terminal()),
      next_(Clock::now() + patience) {}

void Progress::at(std::size_t number) {
    if (!is_watched_ || Clock::now() < next_) return;
    std::fprintf(stderr, "\r%zu of %zu %s", number + 1, count_, things_);
    std::fflush(stderr);
    is_shown_ = true;
    next_ = Clock::now() + interval;
}

Progress::~Progress() {
    if (!is_shown_) return;
    std::fputs("\r\x1b[K", stderr); // ECMA-48, EL: erase to the end of the line
    std::fflush(stderr);
}
