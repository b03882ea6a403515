// Natural numbers of any size, with just the operations that an exact reading of a decimal number needs.
#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <vector>

namespace bankwright {

class BigNatural {
public:
    BigNatural() = default;
    explicit BigNatural(std::uint32_t value) {
        if (value != 0) words_.push_back(value);
    }

    void multiply_add(std::uint32_t factor, std::uint32_t term) {
        std::uint64_t carry = term;
        for (auto& word : words_) {
            carry += std::uint64_t{word} * factor;
            word = static_cast<std::uint32_t>(carry);
            carry >>= 32;
        }
        if (carry != 0) words_.push_back(static_cast<std::uint32_t>(carry));
    }

    void multiply(std::uint64_t factor) {
        BigNatural high = *this;
        high.multiply_add(static_cast<std::uint32_t>(factor >> 32), 0);
        high.trim();
        high.shift_left(32);
        multiply_add(static_cast<std::uint32_t>(factor), 0);
        add(high);
        trim();
    }

    void multiply_by_power_of_five(int power) {
        constexpr std::uint32_t five_to_13 = 1220703125; // the largest that fits
        for (; power >= 13; power -= 13)
            multiply_add(five_to_13, 0);
        for (; power > 0; --power)
            multiply_add(5, 0);
    }

    void add(BigNatural const& other) {
        words_.resize(std::max(words_.size(), other.words_.size()), 0);
        std::uint64_t carry = 0;
        for (std::size_t i = 0; i < words_.size(); ++i) {
            carry += std::uint64_t{words_[i]} + (i < other.words_.size() ? other.words_[i] : 0);
            words_[i] = static_cast<std::uint32_t>(carry);
            carry >>= 32;
        }
        if (carry != 0) words_.push_back(static_cast<std::uint32_t>(carry));
    }

    // Needs other <= *this.
    void subtract(BigNatural const& other) {
        std::uint64_t borrow = 0;
        for (std::size_t i = 0; i < words_.size(); ++i) {
            std::uint64_t const take = (i < other.words_.size() ? std::uint64_t{other.words_[i]} : 0) + borrow;
            borrow = words_[i] < take ? 1 : 0;
            words_[i] = static_cast<std::uint32_t>((borrow << 32) + words_[i] - take);
        }
        trim();
    }

    void shift_left(int bits) {
        if (words_.empty() || bits == 0) return;
        words_.insert(words_.begin(), static_cast<std::size_t>(bits / 32), 0);
        if (bits % 32 != 0) multiply_add(std::uint32_t{1} << (bits % 32), 0);
    }

    int bit_length() const {
        if (words_.empty()) return 0;
        int bits = 32 * static_cast<int>(words_.size() - 1);
        for (std::uint32_t top = words_.back(); top != 0; top >>= 1)
            ++bits;
        return bits;
    }

    friend int compare(BigNatural const& a, BigNatural const& b) {
        if (a.words_.size() != b.words_.size()) return a.words_.size() < b.words_.size() ? -1 : 1;
        for (std::size_t i = a.words_.size(); i-- > 0;)
            if (a.words_[i] != b.words_[i]) return a.words_[i] < b.words_[i] ? -1 : 1;
        return 0;
    }

private:
    void trim() {
        while (!words_.empty() && words_.back() == 0)
            words_.pop_back();
    }

    std::vector<std::uint32_t> words_; // least significant first, no zeros on top
};

} // namespace bankwright
