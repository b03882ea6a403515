// Which of the parallel lines in a channel does each stretch of a conductor take, so that no two run on top of each
// other?
#pragma once

#include <algorithm>
#include <cstddef>
#include <utility>
#include <vector>

namespace bankwright::drawing {

// The place of one stretch along its channel, in any measure that rises along it. Both ends belong to it.
struct Stretch {
    double from = 0.0;
    double to = 0.0;
};

class Tracks {
public:
    // The first line on which nothing else lies there.
    int take(double a, double b) {
        auto const [from, to] = std::minmax(a, b);
        for (std::size_t line = 0;; ++line) {
            if (line == lines_.size()) lines_.emplace_back();
            auto& taken = lines_[line];
            auto const meets = [from = from, to = to](Stretch const& s) { return s.from <= to && from <= s.to; };
            if (std::any_of(taken.begin(), taken.end(), meets)) continue;
            taken.push_back({from, to});
            return static_cast<int>(line);
        }
    }

    int lines() const { return static_cast<int>(lines_.size()); }

private:
    std::vector<std::vector<Stretch>> lines_;
};

} // namespace bankwright::drawing
