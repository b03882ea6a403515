// Work in equal parts on several threads, one of them this one.
#pragma once

#include "bankwright/linkage.hpp"

#include <cstddef>
#include <functional>

namespace bankwright::solver {

// Runs `work(first, last)` on equal parts of [0, blocks) at once. It must not throw.
void share_out(std::size_t blocks, int threads, std::function<void(std::size_t, std::size_t)> const& work);

} // namespace bankwright::solver

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/solver/share_out_inl.hpp"
#endif
