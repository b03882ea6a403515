// Work in equal parts on several threads, one of them this one.
#pragma once

#include <algorithm>
#include <cstddef>
#include <thread>
#include <vector>

namespace bankwright::solver {

// Runs `work(first, last)` on equal parts of [0, blocks) at once. It must not throw.
template <class Work>
void share_out(std::size_t blocks, int threads, Work work) {
    std::size_t const parts =
        std::clamp<std::size_t>(static_cast<std::size_t>(std::max(threads, 1)), 1, std::max<std::size_t>(blocks, 1));
    std::vector<std::thread> others;
    for (std::size_t part = 1; part < parts; ++part)
        others.emplace_back(work, blocks * part / parts, blocks * (part + 1) / parts);
    work(std::size_t{0}, blocks / parts);
    for (std::thread& other : others)
        other.join();
}

} // namespace bankwright::solver
