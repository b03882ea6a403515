// A calendar date, as on a battery's label.
#pragma once

namespace bankwright {

struct Date {
    int year = 0;
    int month = 0; // 1..12
    int day = 0;   // 1..31
    friend constexpr bool operator==(Date, Date) = default;
};

// Months from a to b, whole and part: used only to compare ages.
constexpr double months_between(Date a, Date b) {
    return (b.year - a.year) * 12.0 + (b.month - a.month) + (b.day - a.day) / 30.4;
}

} // namespace bankwright
