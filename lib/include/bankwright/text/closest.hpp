// Did they mean one of these? The candidate nearest to a misspelled word.
#pragma once

#include <algorithm>
#include <cstddef>
#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace bankwright {

// Upper and lower case are the same letter here, and so are '-', '_' and a blank.
constexpr bool same_letter(char a, char b) {
    auto const fold = [](char c) {
        if (c >= 'A' && c <= 'Z') return static_cast<char>(c - 'A' + 'a');
        return c == '_' || c == ' ' ? '-' : c;
    };
    return fold(a) == fold(b);
}

constexpr bool same_letters(std::string_view a, std::string_view b) {
    if (a.size() != b.size()) return false;
    for (std::size_t i = 0; i < a.size(); ++i)
        if (!same_letter(a[i], b[i])) return false;
    return true;
}

// Insertions, deletions, replacements and swaps of neighbors that turn one word into the other (optimal string
// alignment), by same_letter(). Time is the product of the lengths.
inline std::size_t edit_distance(std::string_view a, std::string_view b) {
    std::vector<std::size_t> before(b.size() + 1), above(b.size() + 1), row(b.size() + 1);
    for (std::size_t j = 0; j <= b.size(); ++j)
        row[j] = j;
    for (std::size_t i = 1; i <= a.size(); ++i) {
        before.swap(above);
        above.swap(row);
        row[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            std::size_t const replaced = above[j - 1] + (same_letter(a[i - 1], b[j - 1]) ? 0 : 1);
            row[j] = std::min({above[j] + 1, row[j - 1] + 1, replaced});
            if (i > 1 && j > 1 && same_letter(a[i - 1], b[j - 2]) && same_letter(a[i - 2], b[j - 1]))
                row[j] = std::min(row[j], before[j - 2] + 1);
        }
    }
    return row[b.size()];
}

// The nearest candidate; of several the one that begins with the word (`reads` of "read"), else the first. None where
// more than about a third of the word would have to change.
template <class Candidates>
std::optional<std::string> closest(std::string_view word, Candidates const& candidates) {
    constexpr std::size_t longest = 64; // no key or id that anybody types is longer
    std::optional<std::string> best;
    std::size_t best_distance = 4; // three slips at most
    if (word.empty() || word.size() > longest) return best;
    for (std::string_view const candidate : candidates) {
        if (candidate.empty() || candidate.size() > longest) continue;
        std::size_t const allowed = (std::max(word.size(), candidate.size()) + 1) / 3;
        std::size_t const distance = edit_distance(word, candidate);
        bool const begins_with_it =
            candidate.size() > word.size() && same_letters(candidate.substr(0, word.size()), word);
        bool const is_nearer = distance < best_distance || (distance == best_distance && begins_with_it && best);
        if (distance > allowed || !is_nearer) continue;
        best_distance = distance;
        best = std::string(candidate);
    }
    return best;
}

inline std::optional<std::string> closest(std::string_view word, std::initializer_list<std::string_view> candidates) {
    return closest<std::initializer_list<std::string_view>>(word, candidates);
}

} // namespace bankwright
