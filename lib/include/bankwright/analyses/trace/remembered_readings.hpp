// What each suspect makes of each reading at hand: worked out once, as the same readings are weighed again and again.
// Forgotten with the reading, so that it never grows beyond what is at hand.
#pragma once

#include "bankwright/analyses/trace/suspects.hpp"
#include "bankwright/network/moment.hpp"

#include <algorithm>
#include <cstddef>
#include <utility>
#include <vector>

namespace bankwright::internal::tracing {

// By reading; `owned` holds them where they are not remembered.
struct ExpectedOfAll {
    std::vector<ExpectedReading> owned;
    std::vector<ExpectedReading const*> by_reading;
};

class RememberedReadings {
public:
    explicit RememberedReadings(Suspects& suspects) : suspects_(suspects) {}

    struct Wanted {
        Moment moment;
        AskedReading asked;
    };
    // From now on these and no others; returns their numbers, which a reading keeps for as long as it is wanted.
    std::vector<std::size_t> want(std::vector<Wanted> const& wanted) {
        std::vector<Column> kept;
        std::vector<std::size_t> numbers;
        for (auto const& one : wanted) {
            auto const is_it = [&](Column const& column) { return is_same(column.wanted, one); };
            auto known = std::find_if(kept.begin(), kept.end(), is_it);
            if (known == kept.end()) {
                auto const before = std::find_if(columns_.begin(), columns_.end(), is_it);
                kept.push_back(before == columns_.end() ? Column{one, next_number_++, {}, {}} : std::move(*before));
                if (before != columns_.end()) columns_.erase(before);
                known = kept.end() - 1;
            }
            numbers.push_back(known->number);
        }
        columns_ = std::move(kept);
        auto const bytes = suspects_.singles() * suspects_.elements() * sizeof(double) * columns_.size();
        has_room_ = bytes <= most_bytes;
        if (!has_room_)
            for (auto& column : columns_)
                column.expected.clear(), column.is_known.clear();
        return numbers;
    }

    // Of the readings with these numbers.
    ExpectedOfAll of(std::size_t suspect, std::vector<std::size_t> const& numbers) {
        bool const is_remembered = has_room_ && suspect < suspects_.singles();
        ExpectedOfAll all;
        all.by_reading.resize(numbers.size());
        if (!is_remembered) all.owned.resize(numbers.size());
        std::vector<char> done(numbers.size(), 0);
        for (std::size_t r = 0; r < numbers.size(); ++r) {
            if (done[r]) continue;
            std::vector<std::size_t> then; // those that are to be worked out at the moment of this one
            auto& first = column(numbers[r]);
            for (auto q = r; q < numbers.size(); ++q) {
                auto& one = column(numbers[q]);
                if (done[q] || (q != r && !suspecting::same(one.wanted.moment, first.wanted.moment))) continue;
                done[q] = 1;
                if (is_remembered && is_known(one, suspect))
                    all.by_reading[q] = &one.expected[suspect];
                else
                    then.push_back(q);
            }
            if (then.empty()) continue;
            std::vector<AskedReading> asked;
            for (auto q : then)
                asked.push_back(column(numbers[q]).wanted.asked);
            auto worked_out = suspects_.readings(suspect, first.wanted.moment, asked);
            for (std::size_t i = 0; i < then.size(); ++i) {
                auto& place = is_remembered ? room_for(column(numbers[then[i]]), suspect) : all.owned[then[i]];
                place = std::move(worked_out[i]);
                all.by_reading[then[i]] = &place;
            }
        }
        return all;
    }

private:
    static constexpr std::size_t most_bytes = 64u << 20;

    struct Column { // one reading
        Wanted wanted;
        std::size_t number = 0;
        std::vector<ExpectedReading> expected; // by suspect
        std::vector<char> is_known;
    };
    static bool is_same(Wanted const& a, Wanted const& b) {
        return suspecting::same(a.moment, b.moment) && a.asked.red == b.asked.red && a.asked.black == b.asked.black &&
               a.asked.element == b.asked.element;
    }
    static bool is_known(Column const& column, std::size_t suspect) {
        return !column.is_known.empty() && column.is_known[suspect];
    }
    Column& column(std::size_t number) {
        return *std::find_if(columns_.begin(), columns_.end(),
                             [&](Column const& column) { return column.number == number; });
    }
    ExpectedReading& room_for(Column& column, std::size_t suspect) const {
        if (column.is_known.empty()) {
            column.expected.resize(suspects_.singles());
            column.is_known.resize(suspects_.singles(), 0);
        }
        column.is_known[suspect] = 1;
        return column.expected[suspect];
    }

    Suspects& suspects_;
    std::vector<Column> columns_;
    std::size_t next_number_ = 0;
    bool has_room_ = true;
};

} // namespace bankwright::internal::tracing
