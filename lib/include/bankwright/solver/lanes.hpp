// How many banks are computed side by side, and by which instructions?
//
// Values of one kind for `lanes` banks lie side by side (a row); a block of banks is a list of rows. The instructions
// are chosen at run time, so one program serves every processor of its kind; answers differ between them by rounding
// only.
#pragma once

#include "bankwright/graph/as_index.hpp"
#include "bankwright/linkage.hpp"

#include <cstddef>
#include <memory>
#include <new>
#include <string_view>

namespace bankwright::solver {

// Enough to hide the latency of a division, few enough for a dozen batteries to stay in a first-level cache.
inline constexpr int lanes = 16;

// So many numbers rounded up to whole rows: how many rows, and how many numbers those hold.
constexpr std::size_t rows_for(std::size_t count) {
    constexpr std::size_t row = lanes;
    return (count + row - 1) / row;
}
constexpr std::size_t padded(std::size_t count) { return rows_for(count) * lanes; }

enum class InstructionSet {
    portable, // whatever the program was compiled for
    avx2,     // four doubles, with fused multiply-add
    avx512,   // eight doubles
};

constexpr std::string_view name(InstructionSet set) {
    return set == InstructionSet::avx512 ? "AVX-512" : set == InstructionSet::avx2 ? "AVX2" : "portable";
}

// Does this processor, and this build, have it?
bool runs_here(InstructionSet set);
InstructionSet widest_here();

// Rows of doubles, aligned for every instruction set, all zero at first.
class LaneRows {
public:
    explicit LaneRows(std::size_t count)
        : size_(count * as_index(lanes)),
          values_(static_cast<double*>(::operator new (size_ * sizeof(double), std::align_val_t{64}))) {
        std::uninitialized_fill_n(values_.get(), size_, 0.0);
    }
    double* data() { return values_.get(); }
    double const* data() const { return values_.get(); }
    double* row(int i) { return values_.get() + static_cast<std::ptrdiff_t>(i) * lanes; }
    double const* row(int i) const { return values_.get() + static_cast<std::ptrdiff_t>(i) * lanes; }
    std::size_t size() const { return size_; }

private:
    struct Free {
        void operator()(double* p) const { ::operator delete (p, std::align_val_t{64}); }
    };
    std::size_t size_;
    std::unique_ptr<double[], Free> values_;
};

} // namespace bankwright::solver

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/solver/lanes_inl.hpp"
#endif
