// Body of share_out.hpp.
#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/solver/share_out.hpp"

#include <algorithm>
#include <thread>
#include <vector>

namespace bankwright::solver {

BANKWRIGHT_INLINE void share_out(std::size_t blocks, int threads,
                                 std::function<void(std::size_t, std::size_t)> const& work) {
    std::size_t const parts =
        std::clamp<std::size_t>(as_index(std::max(threads, 1)), 1, std::max<std::size_t>(blocks, 1));
    std::vector<std::thread> others;
    for (std::size_t part = 1; part < parts; ++part)
        others.emplace_back(std::cref(work), blocks * part / parts, blocks * (part + 1) / parts);
    work(std::size_t{0}, blocks / parts);
    for (std::thread& other : others)
        other.join();
}

} // namespace bankwright::solver
