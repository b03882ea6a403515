// What did somebody type? "36", "36v", "20 feet", "4", "80 lb", "12 V AGM 100 Ah": units as people write them, and what
// a bare number stands for. One judge for the command line, the questions at the terminal and Python.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/planning/wish.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace bankwright {

// As typed; empty where nothing was.
struct WishWords {
    std::string system, motor, run, runtime, throttle, battery, chemistry, charger, drop, stock;

    friend bool operator==(WishWords const&, WishWords const&) = default;

    std::string& of(WishPart part); // throws std::out_of_range for `parts`, which is no text of the wish
    std::string const& of(WishPart part) const;
};

struct ReadWish {
    std::optional<Wish> wish; // none if something is missing or wrong
    std::vector<WishProblem> problems;
};

// All that is wrong at once. A system, a motor, a run and a run time are needed.
ReadWish read_wish(WishWords const& words);

// One answer by itself: how it was understood ("20 ft"), or what is wrong with it.
struct ReadAnswer {
    std::string understood;
    std::string problem; // empty if all is well
    std::string help;
};
ReadAnswer read_answer(WishPart part, std::string_view text);

} // namespace bankwright

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/planning/wish_words_inl.hpp"
#endif
