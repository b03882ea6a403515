#pragma once

#include "bankwright/drawing/layout/battery_rows.hpp"

#include <algorithm>
#include <map>
#include <numeric>
#include <utility>

namespace bankwright::drawing {

namespace internal {

// A string is a path from battery to battery; each post belongs to at most one joint of it. Joints are, best first:
// conductors from + to -, conductors from + to + or - to - where one battery was turned around, and a + and a - that a
// device or busbar joins.
class StringWalk {
public:
    explicit StringWalk(Scheme const& scheme)
        : scheme_(scheme), joined_(2 * static_cast<std::size_t>(scheme.batteries), -1),
          of_(static_cast<std::size_t>(scheme.batteries)) {
        std::iota(of_.begin(), of_.end(), 0);
    }

    BatteryRows place() {
        rows_.is_series_jumper.assign(scheme_.wires.size(), false);
        join_by_conductors();
        join_turned();
        join_through_devices();
        stack(wrapped(seated(strings())));
        return std::move(rows_);
    }

private:
    struct Placed {
        int battery = 0;
        bool turned = false;
    };
    using String = std::vector<Placed>;

    static int post(End const& end) { return 2 * end.part + end.terminal; }
    static int other(int post) { return post ^ 1; }
    static bool is_plus(int post) { return post % 2 == 0; }
    int& joined(int post) { return joined_[static_cast<std::size_t>(post)]; }
    int group(int post) const { return scheme_.battery_groups[static_cast<std::size_t>(post)]; }
    int root(int battery) {
        auto b = static_cast<std::size_t>(battery);
        while (of_[b] != static_cast<int>(b))
            b = static_cast<std::size_t>(of_[b] = of_[static_cast<std::size_t>(of_[b])]);
        return static_cast<int>(b);
    }
    bool can_join(int p, int q) { return joined(p) < 0 && joined(q) < 0 && root(p / 2) != root(q / 2); }
    void join(int p, int q) {
        joined(p) = q;
        joined(q) = p;
        of_[static_cast<std::size_t>(root(p / 2))] = root(q / 2);
    }

    void join_by_conductors() {
        for (std::size_t w = 0; w < scheme_.wires.size(); ++w) {
            auto const& wire = scheme_.wires[w];
            if (!wire.joins_batteries() || wire.from.terminal == wire.to.terminal) continue;
            auto const p = post(wire.from), q = post(wire.to);
            if (!can_join(p, q)) continue;
            join(p, q);
            rows_.is_series_jumper[w] = true;
        }
    }

    // The post at the other end of the string that ends at this one.
    int far_end(int post) {
        for (auto at = other(post);; at = other(joined(at)))
            if (joined(at) < 0) return at;
    }
    int batteries_from(int post) {
        int count = 1;
        for (auto at = other(post); joined(at) >= 0; at = other(joined(at)))
            ++count;
        return count;
    }
    bool fits(int batteries) const { return scheme_.series_wanted == 0 || batteries <= scheme_.series_wanted; }
    bool lies_alone(int post) { return joined(other(post)) < 0; }

    // A conductor between like posts links parallel strings, unless one battery is turned: then it stands alone, and
    // the far ends are not linked as well.
    void join_turned() {
        for (std::size_t w = 0; w < scheme_.wires.size(); ++w) {
            auto const& wire = scheme_.wires[w];
            if (!wire.joins_batteries() || wire.from.terminal != wire.to.terminal) continue;
            auto const p = post(wire.from), q = post(wire.to);
            if (!can_join(p, q) || !(lies_alone(p) || lies_alone(q))) continue;
            if (!fits(batteries_from(p) + batteries_from(q))) continue;
            if (group(far_end(p)) == group(far_end(q))) continue;
            join(p, q);
            rows_.is_series_jumper[w] = true;
        }
    }

    void join_through_devices() {
        std::map<int, std::vector<int>> open; // ends of strings, by group
        for (int p = 0; p < 2 * scheme_.batteries; ++p)
            if (joined(p) < 0) open[group(p)].push_back(p);
        for (auto const& [g, posts] : open) {
            if (posts.size() != 2 || is_plus(posts[0]) == is_plus(posts[1]) || !can_join(posts[0], posts[1])) continue;
            if (group(far_end(posts[0])) != group(far_end(posts[1]))) join(posts[0], posts[1]);
        }
    }

    // In the author's order of the first battery of each, most batteries with their - on the left.
    std::vector<String> strings() {
        std::vector<bool> done(static_cast<std::size_t>(scheme_.batteries), false);
        std::vector<String> all;
        for (int first = 0; first < scheme_.batteries; ++first) {
            if (done[static_cast<std::size_t>(first)]) continue;
            String string;
            for (auto enter = far_end(2 * first);; enter = joined(other(enter))) { // + of the first: its - side end
                string.push_back({enter / 2, is_plus(enter)});
                done[static_cast<std::size_t>(enter / 2)] = true;
                if (joined(other(enter)) < 0) break;
            }
            auto const turned = std::count_if(string.begin(), string.end(), [](auto const& p) { return p.turned; });
            auto const size = static_cast<std::ptrdiff_t>(string.size());
            auto const of_first =
                std::find_if(string.begin(), string.end(), [&](auto const& p) { return p.battery == first; });
            if (2 * turned > size || (2 * turned == size && of_first->turned)) {
                std::reverse(string.begin(), string.end());
                for (auto& placed : string)
                    placed.turned = !placed.turned;
            }
            all.push_back(std::move(string));
        }
        return all;
    }

    // Where a joint is missing or on a wrong post, what the author wrote side by side stays side by side.
    std::vector<String> seated(std::vector<String> strings) const {
        std::vector<String> rows;
        for (auto& string : strings) {
            auto const by_number = [](Placed a, Placed b) { return a.battery < b.battery; };
            auto const first = std::min_element(string.begin(), string.end(), by_number)->battery;
            if (!rows.empty() && scheme_.series_wanted > 1) {
                auto& last = rows.back();
                auto const next = std::max_element(last.begin(), last.end(), by_number)->battery + 1;
                if (next == first && fits(static_cast<int>(last.size() + string.size()))) {
                    last.insert(last.end(), string.begin(), string.end());
                    continue;
                }
            }
            rows.push_back(std::move(string));
        }
        return rows;
    }

    // A long string goes on in the row below, back the way it came, as evenly as may be: a screen is four batteries
    // wide with room for the rest.
    static std::vector<String> wrapped(std::vector<String> const& strings) {
        constexpr std::size_t most = 4;
        std::vector<String> rows;
        for (auto const& string : strings) {
            auto const count = (string.size() + most - 1) / most;
            for (std::size_t row = 0; row < count; ++row) {
                auto const at = [&](std::size_t i) {
                    return string.begin() + static_cast<std::ptrdiff_t>(string.size() * i / count);
                };
                rows.emplace_back(at(row), at(row + 1));
                if (row % 2 == 0) continue;
                std::reverse(rows.back().begin(), rows.back().end());
                for (auto& placed : rows.back())
                    placed.turned = !placed.turned;
            }
        }
        return rows;
    }

    // Up to four strings in one stack; short strings beyond that go into stacks side by side, four batteries wide, down
    // the first and up the next, so that links from one to the next stay short.
    void stack(std::vector<String> const& strings) {
        rows_.cells.resize(static_cast<std::size_t>(scheme_.batteries));
        int const count = static_cast<int>(strings.size());
        int longest = 1;
        for (auto const& string : strings)
            longest = std::max(longest, static_cast<int>(string.size()));
        int const stacks = count <= 4 ? 1 : std::clamp((count + 3) / 4, 1, std::max(1, 4 / longest));
        rows_.rows = (count + stacks - 1) / stacks;
        rows_.strings.assign(static_cast<std::size_t>(rows_.rows), 0);
        for (int i = 0; i < count; ++i) {
            int const in_stack = i / rows_.rows;
            int const down = i % rows_.rows;
            int const row = in_stack % 2 == 0 ? down : rows_.rows - 1 - down;
            int column = in_stack * longest;
            for (auto const& placed : strings[static_cast<std::size_t>(i)])
                rows_.cells[static_cast<std::size_t>(placed.battery)] = {row, column++, placed.turned};
            rows_.columns = std::max(rows_.columns, column);
            ++rows_.strings[static_cast<std::size_t>(row)];
        }
    }

    Scheme const& scheme_;
    std::vector<int> joined_; // by post: the post at the other end of its joint, or -1
    std::vector<int> of_;     // by battery: union-find over strings
    BatteryRows rows_;
};

} // namespace internal

BANKWRIGHT_INLINE BatteryRows battery_rows(Scheme const& scheme) { return internal::StringWalk(scheme).place(); }

} // namespace bankwright::drawing
