// How far is a long run? A line on standard error that comes and goes, for a person at a terminal alone.
#pragma once

#include <chrono>
#include <cstddef>

class Progress {
public:
    // `things`: what is counted, in the plural.
    explicit Progress(std::size_t count, char const* things = "files");
    Progress(Progress const&) = delete;
    Progress& operator=(Progress const&) = delete;
    ~Progress(); // takes the line away

    void at(std::size_t number); // counted from 0

private:
    using Clock = std::chrono::steady_clock;

    std::size_t count_;
    char const* things_;
    bool is_watched_; // standard error is a terminal that can erase a line
    bool is_shown_ = false;
    Clock::time_point next_;
};
